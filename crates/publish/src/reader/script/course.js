// Hours: what hands and heat take, the longest chain of stages, and every step by the clock counted back from serving.

import { batches } from './amounts.js';

const middle = ([from, to]) => (from + to) / 2;

// How often a step is done for all pieces: its component grows as the batch does.
const often = (step, times, pieces, isMain) => {
  if (!step.once || !step.of) return 1;
  return batches(isMain ? pieces : step.of * times, step.once);
};

const isMain = (stage) => stage.key.startsWith('0.');

// Minutes with hands and at the heat, and from the first step to the last, each from and to.
export function hours(way, { times, pieces }) {
  const sums = { preparing: [...way.others.preparing], cooking: [...way.others.cooking] };
  const lengths = new Map();
  for (const stage of way.stages) {
    const length = [0, 0];
    for (const step of stage.steps) {
      if (!step.time) continue;
      const many = often(step, times, pieces, isMain(stage));
      const sum = step.hot ? sums.cooking : step.hands ? sums.preparing : null;
      for (const end of [0, 1]) {
        length[end] += step.time[end] * many;
        if (sum) sum[end] += step.time[end] * many;
      }
    }
    lengths.set(stage.key, length);
  }
  const finished = new Map();
  const finish = (key) => {
    if (finished.has(key)) return finished.get(key);
    finished.set(key, [0, 0]);
    const stage = way.stages.find((one) => one.key === key);
    const before = stage.uses.map(finish);
    if (stage.made) before.push(stage.made);
    const ends = [0, 1].map((end) => Math.max(0, ...before.map((one) => one[end])) + lengths.get(key)[end]);
    finished.set(key, ends);
    return ends;
  };
  const all = way.stages.map((stage) => finish(stage.key));
  const total = [0, 1].map((end) => Math.max(0, ...all.map((one) => one[end]), sums.preparing[end] + sums.cooking[end]));
  return { ...sums, total };
}

// Every step with its beginning in minutes before serving, which are negative, and how long it takes.
export function countdown(way, { times, pieces }, foreseen) {
  const stages = new Map(way.stages.map((stage) => [stage.key, stage]));
  const lasts = new Map();
  for (const stage of way.stages) {
    lasts.set(stage.key, stage.steps.map((step, n) => {
      const seen = foreseen.get(`${stage.key}.${n}`);
      const once = seen && !seen.never ? seen.planned : step.time ? middle(step.time) : 0;
      return once * often(step, times, pieces, isMain(stage));
    }));
  }
  const whole = (key) => lasts.get(key).reduce((sum, one) => sum + one, 0);
  const ends = new Map();
  const endOf = (key) => {
    if (ends.has(key)) return ends.get(key);
    ends.set(key, 0);
    const users = way.stages.filter((stage) => stage.uses.includes(key));
    const end = Math.min(0, ...users.map((user) => endOf(user.key) - whole(user.key)));
    ends.set(key, end);
    return end;
  };
  const all = [];
  for (const [key, stage] of stages) {
    let begins = endOf(key) - whole(key);
    stage.steps.forEach((step, n) => {
      const minutes = lasts.get(key)[n];
      all.push({ key: `${key}.${n}`, stage, step, begins, minutes });
      begins += minutes;
    });
  }
  return all;
}
