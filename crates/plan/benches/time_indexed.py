"""The day of `order.rs` as a plain time-indexed mixed-integer model on HiGHS.

A binary for each task and slot says that the task begins then; waits are differences of the beginnings; each
resource has a row for each slot. (Pritsker, Watters and Wolfe, "Multiproject scheduling with limited resources:
a zero-one programming approach", Management Science 16, 1969.) First the wishes' sum is made least, then the end.
Reads the problem from standard input, a line for each part; prints seconds, wishes, end, and whether each was proved.
"""

import sys
import time

import highspy
import numpy

lasts, links, wishes, resources = [], [], [], []
horizon, patience = 0, 60.0
for line in sys.stdin:
    word, *rest = line.split()
    figures = [int(figure) for figure in rest]
    if word == "horizon":
        horizon, patience = figures
    elif word == "task":
        lasts.append(figures[0])
    elif word == "link":
        links.append(figures)
    elif word == "wish":
        wishes.append(figures)
    elif word == "resource":
        resources.append(figures)

model = highspy.Highs()
model.setOptionValue("output_flag", False)
slots = [range(horizon - length + 1) for length in lasts]
first = numpy.cumsum([0] + [len(one) for one in slots])
begins_at = int(first[-1])
give_way, end = begins_at, begins_at + len(wishes)
for _ in range(begins_at):
    model.addVar(0.0, 1.0)
model.changeColsIntegrality(
    begins_at,
    numpy.arange(begins_at, dtype=numpy.int32),
    numpy.full(begins_at, int(highspy.HighsVarType.kInteger), dtype=numpy.uint8),
)
for _ in range(len(wishes) + 1):
    model.addVar(0.0, highspy.kHighsInf)


def row(low, high, terms):
    summed = {}
    for column, value in terms:
        summed[column] = summed.get(column, 0.0) + value
    columns = numpy.array(list(summed), dtype=numpy.int32)
    model.addRow(low, high, len(columns), columns, numpy.array(list(summed.values()), dtype=float))


def begin(task, sign):
    return [(int(first[task]) + slot, sign * slot) for slot in slots[task]]


for task, here in enumerate(slots):
    row(1.0, 1.0, [(int(first[task]) + slot, 1.0) for slot in here])
    row(lasts[task], highspy.kHighsInf, [(end, 1.0)] + begin(task, -1.0))
for before, after, least in links:
    row(lasts[before] + least, highspy.kHighsInf, begin(after, 1.0) + begin(before, -1.0))
for number, (before, after, most) in enumerate(wishes):
    row(-most - lasts[before], highspy.kHighsInf, [(give_way + number, 1.0)] + begin(before, 1.0) + begin(after, -1.0))
for capacity, *tasks in resources:
    for slot in range(horizon):
        busy = [
            (int(first[task]) + at, 1.0)
            for task in tasks
            for at in range(max(0, slot - lasts[task] + 1), min(slot, len(slots[task]) - 1) + 1)
        ]
        if busy:
            row(-highspy.kHighsInf, float(capacity), busy)


def least(columns):
    for column in range(begins_at, end + 1):
        model.changeColCost(column, 1.0 if column in columns else 0.0)
    left = patience - (time.perf_counter() - began)
    if left <= 0:
        return None, False
    model.setOptionValue("time_limit", left)
    model.run()
    is_proved = model.getModelStatus() == highspy.HighsModelStatus.kOptimal
    info = model.getInfo()
    if info.primal_solution_status != 2:
        return None, False
    return round(info.objective_function_value), is_proved


# Building the model is not counted.
began = time.perf_counter()
ways = set(range(give_way, end))
given, is_given_proved = least(ways)
last, is_last_proved = None, False
if is_given_proved:
    if ways:
        row(0.0, given, [(column, 1.0) for column in sorted(ways)])
    last, is_last_proved = least({end})
print()
print(time.perf_counter() - began, given, last, is_given_proved, is_last_proved)
