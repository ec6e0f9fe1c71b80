// What ferments, read from the tables: between two rooms as a power of the degrees, never across a place where a step
// moves.

function partOf(parts, room) {
  return parts.find((part) => (room > part.from || (part.withFrom && room === part.from))
    && (room < part.to || (part.withTo && room === part.to))) ?? parts[parts.length - 1];
}

// Between the two rooms around one; `grows` says that a figure follows a power.
function between(rooms, figures, room, grows) {
  let n = rooms.findIndex((one) => one >= room);
  if (n < 0) n = rooms.length - 1;
  n = Math.max(1, n);
  const [a, b] = [figures[n - 1], figures[n]];
  if (a === null || b === null) return null;
  const [cold, warm] = [rooms[n - 1], rooms[n]];
  const at = Math.min(warm, Math.max(cold, room));
  if (!grows || a <= 0 || b <= 0) return a + ((at - cold) / (warm - cold)) * (b - a);
  return a * (b / a) ** (Math.log(at / cold) / Math.log(warm / cold));
}

// Of each foreseen step by its key: from when to when in minutes, the range to tell, what a plan goes by, and where it
// stands where that is not the room.
export function foreseen(tables, room) {
  const told = new Map();
  if (!tables || room === null) return told;
  const part = partOf(tables.parts, room);
  tables.steps.forEach((step, n) => {
    const column = part.steps[n];
    if (!step.asked || !column) return;
    const from = between(part.rooms, column.at, room, true);
    const to = step.ripens ? between(part.rooms, column.to ?? column.at, room, true) : from;
    told.set(step.key, from === null || to === null ? { never: true, place: column.place } : { ...expected(step, from, to), place: column.place });
  });
  return told;
}

// The range to tell: of a rise its band; of ripeness what it has in common with the stated time, or else all of it.
function expected(step, from, to) {
  if (!step.ripens) {
    const [low, high] = step.band ?? [1, 1];
    return { from, to, ripens: false, tell: [from * low, from * high], planned: from, stated: step.stated };
  }
  const stated = step.stated ?? [from, to];
  const both = [Math.max(from, stated[0]), Math.min(to, stated[1])];
  const tell = both[0] <= both[1] ? both : [from, to];
  return { from, to, ripens: true, tell, planned: (tell[0] + tell[1]) / 2, stated: step.stated };
}

// How warm the liquid of each mix must be, by the mix's stage.
export function liquids(tables, room) {
  if (!tables || room === null) return [];
  const part = partOf(tables.parts, room);
  return part.liquids.map((one) => ({ stage: one.stage, called: one.called, celsius: between(part.rooms, one.at, room, false) }));
}
