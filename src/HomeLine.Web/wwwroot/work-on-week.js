// Keys and drags on the working draft. What may be done is decided on the server; this only says what the hands did.
const keys = new Set(["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "Enter", "Escape"]);
const far = 8;
const edge = 48;

export function watch(root, page) {
  let from = null;
  let dragging = false;
  let over = "";
  let mark = null;
  let work = Promise.resolve();

  // One after another: a drop never overtakes the look before it.
  const tell = (name, ...what) => { work = work.then(() => page.invokeMethodAsync(name, ...what)).catch(() => {}); };

  root.addEventListener("keydown", event => {
    if (root.dataset.holding !== "true" || !keys.has(event.key) || event.ctrlKey || event.altKey || event.metaKey) return;
    const at = event.target;
    if (at.closest("select, input, textarea, a, summary")) { if (event.key !== "Escape") return; }
    // Buttons keep their own Enter.
    if (event.key === "Enter" && at.closest("button")) return;
    event.preventDefault();
    tell("KeyAsync", event.key);
  });

  root.addEventListener("pointerdown", event => {
    const visit = event.target.closest("[data-visit]");
    // A finger scrolls; it picks up by pressing and drops by pressing.
    if (!visit || event.button !== 0 || event.pointerType === "touch" || visit.dataset.moves !== "true") return;
    from = { id: visit.dataset.visit, x: event.clientX, y: event.clientY, text: visit.querySelector(".code")?.textContent ?? "" };
  });

  addEventListener("pointermove", event => {
    if (!from) return;
    if (!dragging) {
      if (Math.hypot(event.clientX - from.x, event.clientY - from.y) < far) return;
      dragging = true;
      over = "";
      mark = document.createElement("div");
      mark.className = "carried";
      mark.textContent = from.text;
      mark.setAttribute("aria-hidden", "true");
      document.body.append(mark);
      tell("DragAsync", from.id);
    }
    mark.style.transform = `translate(${event.clientX + 12}px, ${event.clientY + 12}px)`;
    // Near an edge the page comes along.
    if (event.clientY < edge) scrollBy(0, -edge / 2);
    else if (event.clientY > innerHeight - edge) scrollBy(0, edge / 2);
    const place = under(event);
    const key = place.key;
    if (key !== over && key !== "") {
      over = key;
      tell("OverAsync", place.index, place.nurse, place.day);
    }
  });

  addEventListener("pointerup", event => {
    if (!from) return;
    const wasDragging = dragging;
    from = null;
    dragging = false;
    if (!wasDragging) return;
    mark?.remove();
    mark = null;
    // The click that follows a drag is not a press.
    const swallow = click => { click.preventDefault(); click.stopPropagation(); };
    addEventListener("click", swallow, { capture: true, once: true });
    setTimeout(() => removeEventListener("click", swallow, { capture: true }), 0);
    const place = under(event);
    tell("LetGoAsync", place.index, place.nurse, place.day);
  });

  addEventListener("pointercancel", () => { from = null; dragging = false; mark?.remove(); mark = null; });

  function under(event) {
    const at = document.elementFromPoint(event.clientX, event.clientY);
    const place = at?.closest("[data-place]");
    if (place && root.contains(place)) return { key: "place " + place.dataset.place, index: Number(place.dataset.place), nurse: "", day: "" };
    const cell = at?.closest("[data-nurse]");
    if (cell && root.contains(cell)) return { key: `cell ${cell.dataset.nurse} ${cell.dataset.day}`, index: -1, nurse: cell.dataset.nurse, day: cell.dataset.day };
    return { key: "", index: -1, nurse: "", day: "" };
  }
}

// What is in hand is read from its panel; keys work from there. A wide window shows both, a narrow one goes to the panel.
export function focusHand(root) {
  root.querySelector("[data-hand]")?.focus({ preventScroll: innerWidth > 1100 });
}

export function focusVisit(root, visit) {
  for (const button of root.querySelectorAll("[data-visit]")) {
    if (button.dataset.visit === visit) { button.focus(); return; }
  }
}
