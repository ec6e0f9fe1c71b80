// Finds formulas by words in their titles, tags and ingredients. Without it the list is simply whole.
(() => {
  const form = document.querySelector('form.finding');
  const field = form.querySelector('input');
  const status = form.querySelector('[role=status]');
  const plain = (text) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  const items = [...document.querySelectorAll('ul.index > li')];
  const texts = items.map((item) => plain(`${item.textContent} ${item.dataset.words}`));
  const find = () => {
    const words = plain(field.value).split(/\s+/).filter(Boolean);
    let found = 0;
    items.forEach((item, n) => {
      item.hidden = !words.every((word) => texts[n].includes(word));
      if (!item.hidden) found += 1;
    });
    status.textContent = words.length ? status.dataset.found.replace('{found}', found).replace('{all}', items.length) : '';
  };
  // What is looked for stands in the address, so that a list can be kept and passed on.
  const asked = () => {
    const [, words] = location.hash.match(/^#find=(.*)$/) ?? [];
    try { field.value = decodeURIComponent(words ?? ''); } catch { field.value = ''; }
    find();
  };
  field.addEventListener('input', () => {
    find();
    const words = field.value.trim();
    history.replaceState(null, '', words ? `#find=${encodeURIComponent(words)}` : location.pathname + location.search);
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  addEventListener('hashchange', asked);
  form.hidden = false;
  asked();
})();
