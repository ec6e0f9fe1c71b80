// What is weighed out and done is ticked off.

// Puts a box to tick before every ingredient and step that has none yet.
export function boxes(root, settings, changed) {
  for (const item of root.querySelectorAll('[data-line], [data-step]')) {
    const isStep = item.hasAttribute('data-step');
    const key = isStep ? item.dataset.step : item.dataset.line;
    const mark = isStep ? `${key}*0` : key;
    let box = item.querySelector(':scope > input.tick');
    if (!box) {
      box = document.createElement('input');
      box.type = 'checkbox';
      box.className = 'tick';
      item.id ||= `${isStep ? 'step' : 'line'}-${key}`;
      box.setAttribute('aria-labelledby', item.id);
      box.addEventListener('change', () => {
        settings().done[box.checked ? 'add' : 'delete'](mark);
        item.classList.toggle('done', box.checked);
        changed();
      });
      item.prepend(box);
    }
    box.checked = settings().done.has(mark);
    item.classList.toggle('done', box.checked);
  }
}
