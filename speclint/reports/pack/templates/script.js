"use strict";
(() => {
  const all = (what, within = document) => [...within.querySelectorAll(what)];
  const one = (name) => document.getElementById(name);
  let sheets = {};

  const unpack = async () => {
    const bytes = Uint8Array.from(atob(one("packed").textContent), (letter) => letter.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    return JSON.parse(await new Response(stream).text());
  };

  const lay = (details) => {
    if (!details.classList.contains("packed") || details.querySelector(".body")) return;
    const body = document.createElement("div");
    body.className = "body";
    if (sheets[details.id] !== undefined) {
      body.innerHTML = sheets[details.id];
    } else if (details.matches(".still-packed .packed")) {
      body.append(one("not-unpacked").firstChild.cloneNode());
    } else return;
    details.append(body);
  };

  const choose = () => {
    const words = one("search").value.toLowerCase().split(/\s+/).filter(Boolean);
    const wanted = { grade: one("grade").value, family: one("family").value, component: one("component").value };
    let shown = 0;
    for (const item of all(".item")) {
      const said = item.dataset, grade = said.grade ?? "conforms";
      const component = item.closest("[data-component]").dataset.component;
      const text = () => `${item.textContent} ${sheets[item.id] ?? ""} ${component}`.toLowerCase();
      const fits =
        (!wanted.grade || (wanted.grade === "not assessed" ? grade.endsWith(wanted.grade) : grade.split(" ")[0] === wanted.grade)) &&
        (!wanted.family || said.family === wanted.family) &&
        (!wanted.component || [component, ...(said.alike ?? "").split("\n")].includes(wanted.component)) &&
        (!words.length || (() => { const whole = text(); return words.every((word) => whole.includes(word)); })());
      item.hidden = !fits;
      shown += fits;
    }
    for (const part of all("section.part")) {
      part.hidden = !all(".item", part).some((item) => !item.hidden);
    }
    one("shown").textContent = `${shown} shown`;
  };

  const follow = () => {
    const target = one(decodeURIComponent(location.hash.slice(1)));
    if (!target) return;
    if (target.closest("[hidden]")) { one("filters").reset(); choose(); }
    for (let node = target; node; node = node.parentElement) {
      if (node.tagName === "DETAILS") { lay(node); node.open = true; }
    }
    target.scrollIntoView();
    target.setAttribute("tabindex", "-1");
    target.focus({ preventScroll: true });
  };

  let opened = [];
  const unfold = () => {
    const every = one("every").checked;
    document.documentElement.classList.toggle("every", every);
    opened = all("details:not([open])").filter((details) => every || !details.classList.contains("packed"));
    for (const details of opened) { lay(details); details.open = true; }
  };
  const fold = () => { for (const details of opened) details.open = false; opened = []; };

  const ground = () => {
    const root = document.documentElement;
    const dark = root.dataset.ground ? root.dataset.ground === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
    root.dataset.ground = dark ? "light" : "dark";
    one("ground").setAttribute("aria-pressed", String(!dark));
  };

  document.addEventListener("toggle", (event) => { if (event.target.open) lay(event.target); }, true);
  addEventListener("beforeprint", unfold);
  addEventListener("afterprint", fold);
  addEventListener("hashchange", follow);
  one("filters").addEventListener("input", choose);
  one("filters").addEventListener("reset", () => setTimeout(choose));
  one("filters").addEventListener("submit", (event) => event.preventDefault());
  one("ground").addEventListener("click", ground);
  one("filters").hidden = false;
  const begin = () => { choose(); follow(); document.documentElement.dataset.ready = "yes"; };
  unpack().then((found) => { sheets = found; begin(); }, () => {
    one("not-unpacked").hidden = false;
    document.documentElement.classList.add("still-packed");
    begin();
  });
})();
