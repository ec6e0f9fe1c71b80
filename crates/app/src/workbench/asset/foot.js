// At the foot of a small screen: what moves beside the sheet, far below, while somebody types in it.
const glances = () => new Map([...document.querySelectorAll("#glance dl > div")].map((one) => [one.id, { what: one.querySelector("dt").textContent, figure: one.querySelector(".figure")?.textContent, minds: one.classList.contains("minds") }]));

/** So many are told; the foot of a screen is narrow. */
const MOST = 3;
let before = new Map();

/** From here on what moves is told. */
export function watch() {
  before = glances();
}

/** Tells what is other than when it was last watched. */
export function tell() {
  const foot = document.querySelector("#foot");
  if (!foot) return;
  const moved = [...glances()].filter(([id, { figure, minds }]) => before.has(id) && (before.get(id).figure !== figure || before.get(id).minds !== minds));
  foot.replaceChildren(...moved.slice(0, MOST).map(([, { what, figure, minds }]) => line(what, figure, minds)));
  if (moved.length > MOST) foot.append(line("", `and ${moved.length - MOST} more`, false));
  foot.hidden = moved.length === 0;
}

function line(what, figure, minds) {
  const [told, bold] = [document.createElement("span"), document.createElement("b")];
  bold.textContent = figure;
  told.append(what ? `${what} ` : "", bold);
  if (minds) told.className = "minds";
  return told;
}
