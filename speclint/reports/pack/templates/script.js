"use strict";
(() => {
  const all = (what, within = document) => [...within.querySelectorAll(what)];
  const one = (name) => document.getElementById(name);
  const CONFORMING = ".conform > div > details", PACKED = `.long, ${CONFORMING}`;
  let cells = [], lines = [], sheets = {};

  const bytes = (letters) => {  // base 85: the digits from ( to ~ but for < and >
    const words = new DataView(new ArrayBuffer(Math.ceil(letters.length / 5) * 4));
    for (let at = 0; at < letters.length; at += 5) {
      let word = 0;
      for (let next = at; next < at + 5; next++) {
        const code = letters.charCodeAt(next) || 126;
        word = word * 85 + code - 40 - (code > 60) - (code > 62);
      }
      words.setUint32(at / 5 * 4, word);
    }
    return new Uint8Array(words.buffer, 0, Math.floor(letters.length * 4 / 5));
  };

  const unpack = async () => {
    const stream = new Blob([bytes(one("packed").textContent)]).stream().pipeThrough(new DecompressionStream("gzip"));
    ({ cells, lines, sheets } = JSON.parse(await new Response(stream).text()));
    const named = () => { let met = 0; return (number) => (number || ++met) - 1; };
    const cell = named(), line = named();
    lines = lines.map((its) => its.map((number) => cells[cell(number)]).join(""));
    for (const name in sheets) sheets[name] = sheets[name].map(line);
  };

  const sheet = (name) => {
    let number = 0;
    return sheets[name].map((line) => lines[line].replace("\ue000", () => ++number)).join("\n");
  };

  const found = (word) => {
    const holds = lines.map((line) => line.replace(/<[^>]*>/g, " ").toLowerCase().includes(word));
    return (item) => [item, ...all(".long", item)].some((each) => (sheets[each.id] ?? []).some((line) => holds[line]));
  };

  const lay = (details) => {
    if (!details.matches(PACKED) || details.querySelector(".body")) return;
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
    const narrow = Boolean(words.length || wanted.grade || wanted.family);
    let shown = 0;
    for (const item of all(`.item, ${CONFORMING}`)) {
      const said = item.dataset, grade = said.grade ?? "conforms";
      const family = said.family ?? item.parentElement.dataset.family;
      const component = item.closest("[data-component]").dataset.component;
      const says = (text) => words.every((word, index) => text.includes(word) || packed[index](item));
      const fits =
        (!wanted.grade || (wanted.grade === "not assessed" ? grade.endsWith(wanted.grade) : grade.split(" ")[0] === wanted.grade)) &&
        (!wanted.family || family.split(" ").includes(wanted.family)) &&
        (!wanted.component || [component, ...(said.alike ?? "").split("\n")].includes(wanted.component)) &&
        (!words.length || says(`${item.textContent} ${component}`.toLowerCase()));
      item.hidden = !fits;
      shown += fits;
    }
    for (const group of all(".conform")) {
      group.hidden = !all(CONFORMING, group).some((item) => !item.hidden);
      group.open = narrow && !group.hidden;
    }
    for (const part of all("section.part")) {
      part.hidden = !all(`.item, ${CONFORMING}`, part).some((item) => !item.hidden);
    }
    for (const group of all("section.alike")) {
      group.hidden = !all(".part", group).some((part) => !part.hidden);
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
    if (!target.matches("details")) target.setAttribute("tabindex", "-1");
    (target.matches("details") ? target.firstElementChild : target).focus({ preventScroll: true });
  };

  let opened = [];
  const unfold = () => {
    const every = one("every").checked;
    const own = `.part details:is(.sheet, ${CONFORMING})`;
    for (const sheet of all(`${own}[open]`)) {
      for (let node = sheet; !node.matches("section.annex"); node = node.parentElement) node.classList.add("seen");
    }
    const printed = (details) => !details.closest(".part") || details.matches(".seen, .hold > *, :is(.held, .seen) > .drawn > *");
    opened = all("details:not([open])").filter(
      (details) => !details.closest("[hidden], nav") && (every || (printed(details) && !details.closest(".basis"))));
    for (const details of opened) { lay(details); details.open = true; }
    for (const source of all(".finding.hold a, .seen .body a").map((link) => one(link.hash.slice(1)))) source?.classList.add("seen");
  };
  const fold = () => {
    for (const details of opened) details.open = false;
    opened = [];
    for (const node of all(".seen")) node.classList.remove("seen");
  };

  const ground = () => {
    const root = document.documentElement;
    const dark = root.dataset.ground ? root.dataset.ground === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
    root.dataset.ground = dark ? "light" : "dark";
    one("ground").setAttribute("aria-pressed", String(!dark));
  };

  // a stop of the keyboard only where there is something to scroll, and one for all the points of a chart
  let due = 0;
  const stops = () => {
    cancelAnimationFrame(due);
    due = requestAnimationFrame(() => {
      const wide = all(".scroll").map((box) => [box, box.scrollWidth > box.clientWidth + 1]);
      for (const [box, scrolls] of wide) {
        if (scrolls) box.tabIndex = 0; else box.removeAttribute("tabindex");
      }
    });
  };
  const rove = (event) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const chart = event.target.closest?.("svg.drawing");
    if (!step || !chart) return;
    const points = all("a", chart), place = points.indexOf(event.target), next = points[place + step];
    event.preventDefault();
    if (!next) return;
    event.target.setAttribute("tabindex", "-1");
    next.setAttribute("tabindex", "0");
    next.focus();
  };

  document.addEventListener("toggle", (event) => { if (event.target.open) { lay(event.target); stops(); } }, true);
  document.addEventListener("keydown", rove);
  addEventListener("resize", stops);
  addEventListener("beforeprint", unfold);
  addEventListener("afterprint", fold);
  addEventListener("hashchange", follow);
  one("filters").addEventListener("input", choose);
  one("filters").addEventListener("reset", () => setTimeout(choose));
  one("filters").addEventListener("submit", (event) => event.preventDefault());
  one("ground").addEventListener("click", ground);
  for (const name of ["filters", "ground", "arrows"]) one(name).hidden = false;
  for (const chart of all("svg.drawing")) {
    all("a", chart).forEach((point, place) => point.setAttribute("tabindex", place ? "-1" : "0"));
  }
  const begin = () => { choose(); follow(); stops(); document.documentElement.dataset.ready = "yes"; };
  unpack().then(begin, () => {
    one("not-unpacked").hidden = false;
    document.documentElement.classList.add("still-packed");
    begin();
  });
})();
