"use strict";
(() => {
  const all = (what, within = document) => [...within.querySelectorAll(what)];
  const one = (name) => document.getElementById(name);
  let cells = [], lines = [], sheets = {};

  const unpack = async () => {
    const bytes = Uint8Array.from(atob(one("packed").textContent), (letter) => letter.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    ({ cells, lines, sheets } = JSON.parse(await new Response(stream).text()));
    lines = lines.map((line) => line.map((cell) => cells[cell]).join(""));
  };

  const sheet = (name) => {
    let number = 0;
    return sheets[name].map((line) => lines[line].replace("\ue000", () => ++number)).join("\n");
  };

  const found = (word) => {
    const holds = lines.map((line) => line.replace(/<[^>]*>/g, " ").toLowerCase().includes(word));
    return (name) => (sheets[name] ?? []).some((line) => holds[line]);
  };

  const lay = (details) => {
    if (!details.matches(".packed, .long") || details.querySelector(".body")) return;
    const body = document.createElement("div");
    body.className = "body";
    if (sheets[details.id] !== undefined) {
      body.innerHTML = sheet(details.id);
    } else if (details.closest(".still-packed")) {
      body.append(one("not-unpacked").firstChild.cloneNode());
    } else return;
    details.append(body);
  };

  const choose = () => {
    const words = one("search").value.toLowerCase().split(/\s+/).filter(Boolean);
    const packed = words.map(found);
    const wanted = { grade: one("grade").value, family: one("family").value, component: one("component").value };
    let shown = 0;
    for (const item of all(".item")) {
      const said = item.dataset, grade = said.grade ?? "conforms";
      const component = item.closest("[data-component]").dataset.component;
      const says = (text) => words.every((word, index) => text.includes(word) || packed[index](item.id));
      const fits =
        (!wanted.grade || (wanted.grade === "not assessed" ? grade.endsWith(wanted.grade) : grade.split(" ")[0] === wanted.grade)) &&
        (!wanted.family || said.family.split(" ").includes(wanted.family)) &&
        (!wanted.component || [component, ...(said.alike ?? "").split("\n")].includes(wanted.component)) &&
        (!words.length || says(`${item.textContent} ${component}`.toLowerCase()));
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
    opened = all("details:not([open])").filter(
      (details) => (every || !details.classList.contains("packed")) && !details.closest("[hidden]"));
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
  unpack().then(begin, () => {
    one("not-unpacked").hidden = false;
    document.documentElement.classList.add("still-packed");
    begin();
  });
})();
