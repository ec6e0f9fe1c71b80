"""A day's calendar against an independent parser of RFC 5545: PyPI icalendar. Every job that needs hands must come
out at the time that the JSON of the same day says, in the right zone, across a change of the clocks too."""
import datetime
import json
import subprocess
import sys

import icalendar

DAY = ["target/debug/wellproved", "day", "examples/saltmarsh/formulas/potato-muffins.toml"]
DAYS = [
    ("2026-11-29 09:30", "2026-11-26 12:00", "Europe/Vienna"),
    ("2027-03-28 10:30", "2027-03-26 12:00", "Europe/Vienna"),
    ("2026-10-25 10:30", "2026-10-23 12:00", "Europe/Vienna"),
    ("2028-02-29 10:00", "2028-02-27 12:00", "America/New_York"),
    ("2026-11-29 09:30", "2026-11-26 12:00", "UTC"),
]


def run(when, form):
    serve, now, zone = when
    words = [*DAY, "--serve", serve, "--now", now, "--zone", zone, "--patience", "120", "--format", form]
    return subprocess.run(words, check=True, capture_output=True).stdout


def moment(text):
    return datetime.datetime.fromisoformat(text.split("[")[0])


checked, wrong = 0, []
for when in DAYS:
    raw = run(when, "calendar")
    day = json.loads(run(when, "json"))
    for line in raw.split(b"\r\n"):
        if len(line) > 75 or b"\n" in line:
            wrong.append(f"{when}: a line of {len(line)} octets")
    calendar = icalendar.Calendar.from_ical(raw)
    events = {str(event["UID"]): event for event in calendar.walk("VEVENT")}
    jobs = [job for job in day["jobs"] if job["hands"] != "none"]
    if len(events) != len(jobs) + 1:
        wrong.append(f"{when}: {len(events)} events for {len(jobs)} jobs and serving")
    for job in jobs:
        event = next((one for uid, one in events.items() if f"-job-{job['job']}@" in uid), None)
        checked += 1
        if event is None:
            wrong.append(f"{when}: no event for job {job['job']}")
        elif (event.decoded("DTSTART"), event.decoded("DTEND")) != (moment(job["begin"]), moment(job["end"])):
            wrong.append(f"{when}: job {job['job']} from {event.decoded('DTSTART')}, not {job['begin']}")
        elif not event.walk("VALARM"):
            wrong.append(f"{when}: job {job['job']} has no alarm")
    zones = calendar.walk("VTIMEZONE")
    for zone in zones:
        # The zone as it is described, not as the parser knows it by name.
        described = zone.to_tz()
        for job in jobs:
            begin = moment(job["begin"])
            if begin.astimezone(described).utcoffset() != begin.utcoffset():
                wrong.append(f"{when}: the zone is described wrongly at {begin}")
    if not zones and when[2] != "UTC":
        wrong.append(f"{when}: no time zone")
print("\n".join(wrong))
print(f"{checked} jobs held against their calendars, {len(wrong)} findings")
sys.exit(1 if wrong else 0)
