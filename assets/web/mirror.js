// The bench as elements, for reading software: what egui has drawn on the canvas stands here again, unseen, each thing
// at its place. What reading software does with an element goes to egui; keys go to the canvas.
"use strict";
(() => {
  /// Tag and attributes of each kind of element.
  const KINDS = {
    alert: ["p", { role: "alert" }],
    area: ["textarea", {}],
    button: ["button", { type: "button" }],
    checkbox: ["input", { type: "checkbox" }],
    combobox: ["button", { type: "button", "aria-haspopup": "listbox" }],
    dialog: ["div", { role: "dialog" }],
    field: ["input", { type: "text", autocomplete: "off", spellcheck: "false" }],
    group: ["div", { role: "group" }],
    heading: ["h2", {}],
    image: ["div", { role: "img" }],
    link: ["a", { role: "link" }],
    progress: ["div", { role: "progressbar" }],
    radio: ["input", { type: "radio" }],
    slider: ["input", { type: "range" }],
    spinbutton: ["div", { role: "spinbutton" }],
    text: ["p", {}],
  };
  /// These are named by what stands in them.
  const SAID = new Set(["alert", "button", "combobox", "heading", "link", "text"]);
  /// These take the focus, but only from egui: Tab goes its way through the bench.
  const WORKED = new Set(["area", "button", "checkbox", "combobox", "field", "link", "radio", "slider", "spinbutton"]);
  const TYPED = new Set(["area", "field"]);

  /// Sets an attribute, or takes it away.
  const attribute = (element, name, value) => {
    if (value === undefined || value === null || value === "") element.removeAttribute(name);
    else if (element.getAttribute(name) !== String(value)) element.setAttribute(name, value);
  };

  const make = (said) => {
    const [tag, attributes] = KINDS[said.kind];
    const element = document.createElement(said.kind === "heading" ? `h${Math.min(Math.max(said.level ?? 2, 1), 6)}` : tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    if (WORKED.has(said.kind)) element.tabIndex = -1;
    element.dataset.id = said.id;
    return element;
  };

  const fill = (element, said) => {
    const { kind, name } = said;
    const text = kind === "combobox" && said.value ? `${name}: ${said.value}` : name;
    if (!SAID.has(kind)) attribute(element, "aria-label", name);
    // Only what changes: a text that is set again may be read out again.
    else if (element.textContent !== text) element.textContent = text;
    attribute(element, "aria-description", said.description);
    attribute(element, "aria-disabled", said.disabled);
    attribute(element, "aria-expanded", said.expanded);
    if (kind === "dialog") attribute(element, "aria-modal", said.modal);
    if (kind === "checkbox" || kind === "radio") {
      element.checked = said.checked === "true";
      element.indeterminate = said.checked === "mixed";
    } else if (kind === "button") {
      attribute(element, "aria-pressed", said.checked);
    } else if (TYPED.has(kind)) {
      if (element.value !== said.value) element.value = said.value;
    } else if (kind === "slider") {
      attribute(element, "min", said.min);
      attribute(element, "max", said.max);
      attribute(element, "step", said.step ?? "any");
      element.value = said.number;
      attribute(element, "aria-valuetext", said.value);
    } else if (kind === "spinbutton" || kind === "progress") {
      attribute(element, "aria-valuemin", said.min);
      attribute(element, "aria-valuemax", said.max);
      attribute(element, "aria-valuenow", said.number);
      attribute(element, "aria-valuetext", said.value);
    }
  };

  /// Fills `root` with what `change`s tell, hands keys to `canvas`, and calls `ask(id, what, value)` for what reading
  /// software wants of an element: `focus`, `show`, `click`, `number` or `text`.
  globalThis.detentMirror = (root, canvas, ask) => {
    const list = root.querySelector("[data-part=list]");
    const live = root.querySelector("[data-part=live]");
    /// Elements and what was last told of them, by id.
    const known = new Map();
    let scale = 1;
    // What is done here is no wish of anybody's.
    let changing = false;

    const has = (element) => element instanceof Element && root.contains(element);
    const ours = (target) => (target instanceof Element ? known.get(target.closest("[data-id]")?.dataset.id) : undefined);

    const place = ({ element, said }) => {
      const pixels = scale / (globalThis.devicePixelRatio || 1);
      const [left, top, width, height] = said.place.map((points) => Math.round(points * pixels));
      Object.assign(element.style, { left: `${left}px`, top: `${top}px`,
        width: `${Math.max(width, 1)}px`, height: `${Math.max(height, 1)}px` });
    };

    const put = (said) => {
      const before = known.get(said.id);
      const same = before && before.said.kind === said.kind && before.said.level === said.level;
      const element = same ? before.element : make(said);
      if (before && !same) before.element.replaceWith(element);
      const entry = { element, said };
      known.set(said.id, entry);
      fill(element, said);
      place(entry);
    };

    const inside = (within) => (within === "" ? list : within === "live" ? live : known.get(within)?.element);

    /// Puts these ids into this order, and moves no more than it must.
    const arrange = (within, ids) => {
      const parent = inside(within);
      let next = parent.firstElementChild;
      for (const id of ids) {
        const { element } = known.get(id);
        if (element === next) next = next.nextElementSibling;
        else parent.insertBefore(element, next);
      }
    };

    const change = ({ scale: scaled, gone = [], put: said = [], places = {}, order = {}, focus }) => {
      const had = has(document.activeElement);
      said.forEach(put);
      const leaving = gone.map((id) => known.get(id).element);
      // What stands in something that goes may stay.
      leaving.filter((element) => !element.firstElementChild).forEach((element) => element.remove());
      for (const [within, ids] of Object.entries(order)) arrange(within, ids);
      leaving.forEach((element) => element.remove());
      gone.forEach((id) => known.delete(id));
      for (const [id, at] of Object.entries(places)) {
        const entry = known.get(id);
        entry.said.place = at;
        place(entry);
      }
      if (scaled !== undefined && scaled !== scale) {
        scale = scaled;
        known.forEach(place);
      }
      // The keys follow egui, but never away from somebody else's field.
      const lost = had && !has(document.activeElement);
      if (!had && document.activeElement !== canvas) return;
      const wanted = focus === undefined ? null : known.get(focus)?.element;
      if (wanted) wanted.focus({ preventScroll: true });
      else if (lost || (focus === null && had)) canvas.focus({ preventScroll: true });
    };

    // The canvas keeps the keys, for the window, while an element has them for the page.
    document.addEventListener("blur", (event) => {
      if (event.target === canvas && has(event.relatedTarget)) event.stopImmediatePropagation();
    }, { capture: true });
    root.addEventListener("focusin", (event) => {
      // After Escape, Tab leaves the page from here, past the canvas.
      canvas.tabIndex = -1;
      canvas.dispatchEvent(new FocusEvent("focus"));
      const entry = ours(event.target);
      if (changing || !entry) return;
      ask(entry.said.id, "focus", "");
      ask(entry.said.id, "show", "");
    });
    root.addEventListener("focusout", (event) => {
      const entry = ours(event.target);
      if (entry) fill(entry.element, entry.said);
      if (has(event.relatedTarget)) return;
      canvas.tabIndex = 0;
      if (event.relatedTarget !== canvas && !changing) canvas.dispatchEvent(new FocusEvent("blur"));
    });

    /// Hands a key to the canvas, and takes from the browser what the page would have taken there.
    const forward = (event) => {
      const entry = ours(event.target);
      if (!entry) return;
      // A letter put together of several keys comes as text.
      const composed = event.isComposing || ["Dead", "Process", "Unidentified"].includes(event.key);
      if (TYPED.has(entry.said.kind) && composed) return;
      const copy = new KeyboardEvent(event.type, event);
      // How long ago a key moved is told from this.
      Object.defineProperty(copy, "timeStamp", { value: event.timeStamp });
      canvas.dispatchEvent(copy);
      const graph = event.getModifierState("AltGraph");
      const plain = graph || (!event.ctrlKey && !event.metaKey && !event.altKey);
      // Else it would press or write here as well.
      const acts = event.key === "Enter" || event.key.length === 1 || event.key === "Delete";
      if (copy.defaultPrevented || (plain && acts)) event.preventDefault();
    };
    root.addEventListener("keydown", forward);
    root.addEventListener("keyup", forward);

    root.addEventListener("click", (event) => {
      const entry = ours(event.target);
      if (!entry || TYPED.has(entry.said.kind) || entry.said.kind === "slider") return;
      // What is checked is egui's to say.
      event.preventDefault();
      if (WORKED.has(entry.said.kind) && !entry.said.disabled) ask(entry.said.id, "click", "");
    });
    root.addEventListener("input", (event) => {
      const entry = ours(event.target);
      if (!entry || entry.said.disabled) return;
      if (TYPED.has(entry.said.kind)) ask(entry.said.id, "text", entry.element.value);
      else if (entry.said.kind === "slider") ask(entry.said.id, "number", entry.element.value);
    });
    // The window takes it from the clipboard itself.
    root.addEventListener("paste", (event) => event.preventDefault());

    return {
      apply(told) {
        changing = true;
        try { change(told); } finally { changing = false; }
      },
    };
  };
})();
