// What the reader chose, kept in the page's own address, so that it can be shared and bookmarked.

// The figures that may be asked for, with the least and the most of each.
const FIGURES = {
  pieces: [0.5, 10000], each: [1, 10000], times: [0.05, 1000],
  long: [1, 200], wide: [1, 200], round: [1, 200], high: [1, 200], holds: [10, 100000], tins: [1, 1000],
};
const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

export function afresh(data) {
  return {
    pieces: 0, each: 0, times: 0, tin: '', long: 0, wide: 0, round: 0, high: 0, holds: 0, tins: 0,
    amounts: '', spoons: data.own.household, degrees: '', eggs: '', protein: {}, room: null, way: '',
    serve: '', begin: '', done: new Set(), timers: [],
  };
}

// Reads an address; what is no sense in it is left out.
export function read(data, address) {
  const settings = afresh(data);
  const asked = new URLSearchParams(address.replace(/^#/, ''));
  const one = (name, fits) => {
    const value = asked.get(name);
    if (value !== null && fits(value)) settings[name] = value;
  };
  for (const [name, [least, most]] of Object.entries(FIGURES)) {
    const value = Number(asked.get(name));
    if (value >= least && value <= most) settings[name] = value;
  }
  one('tin', (value) => data.size?.tin && ['box', 'round', 'volume'].includes(value));
  one('amounts', (value) => value === 'spoons');
  one('spoons', (value) => Object.hasOwn(data.spoons, value));
  one('degrees', (value) => value === 'c' || value === 'f');
  one('eggs', (value) => data.eggs !== null && Object.hasOwn(data.eggs.weigh, value));
  one('way', (value) => data.ways.some((way) => way.key === value));
  one('serve', (value) => CLOCK.test(value));
  one('begin', (value) => CLOCK.test(value));
  const room = asked.get('room');
  if (room !== null && room !== '' && Number(room) >= data.room.from && Number(room) <= data.room.to) settings.room = Number(room);
  for (const flour of data.ways.flatMap((way) => way.flours)) {
    const value = Number(asked.get(`protein.${flour.name}`));
    if (value >= leastProtein(flour) && value <= mostProtein(flour)) settings.protein[flour.name] = value;
  }
  const keys = (name) => (asked.get(name) ?? '').split(',').filter((key) => /^(n\.)?\d+\.\d+(\.\d+)?(\*\d+)?$/.test(key));
  settings.done = new Set(keys('done'));
  settings.timers = keys('timers').filter((key) => key.includes('*')).map((text) => {
    const [key, ends] = text.split('*');
    return { key, ends: Number(ends) * 1000 };
  });
  return settings;
}

export const leastProtein = (flour) => Math.max(4, flour.protein - 4);
export const mostProtein = (flour) => flour.protein + 4;

// Writes the settings as an address, only what is not as published.
export function write(data, settings) {
  const fresh = afresh(data);
  const parts = [];
  for (const [name, value] of Object.entries(settings)) {
    if (typeof value === 'object' && value !== null) continue;
    if (value !== fresh[name] && value !== null) parts.push(`${name}=${encodeURIComponent(value)}`);
  }
  for (const [name, value] of Object.entries(settings.protein)) parts.push(`protein.${encodeURIComponent(name)}=${value}`);
  if (settings.done.size > 0) parts.push(`done=${[...settings.done].join(',')}`);
  if (settings.timers.length > 0) {
    parts.push(`timers=${settings.timers.map(({ key, ends }) => `${key}*${Math.round(ends / 1000)}`).join(',')}`);
  }
  return parts.length > 0 ? `#${parts.join('&')}` : '';
}
