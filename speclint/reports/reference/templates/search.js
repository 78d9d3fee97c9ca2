(() => {
  const form = document.getElementById("search");
  const words = document.getElementById("words");
  const results = document.getElementById("results");
  const found = document.getElementById("found");
  const list = results.querySelector(".found");
  const up = form.dataset.up;
  const most = 60;
  let texts = null;
  let loading = false;

  function load() {
    if (loading) return;
    loading = true;
    const script = document.createElement("script");
    script.src = up + form.dataset.index;
    script.addEventListener("load", ready);
    script.addEventListener("error", () => { say("The index of the search cannot be read: it stands beside the front page."); });
    document.head.append(script);
  }

  function ready() {
    const index = globalThis.referenceIndex;
    texts = index.entries.map(([name, sort, file, anchor, says]) => ({
      name, sort: index.sorts[sort], says, low: name.toLowerCase(), all: `${name} ${index.sorts[sort]} ${says}`.toLowerCase(),
      place: index.files[file] + (anchor === 0 ? "" : `#${anchor || name}`),
    }));
    document.documentElement.dataset.index = "ready";
    search();
  }

  function say(text) {
    results.hidden = false;
    found.textContent = text;
  }

  function rank(one, asked, whole) {
    if (one.low === whole) return 0;
    if (one.low.startsWith(whole)) return 1;
    if (one.low.includes(whole)) return 2;
    return asked.every((word) => one.low.includes(word)) ? 3 : 4;
  }

  function search() {
    const whole = words.value.trim().toLowerCase();
    const asked = whole.split(/\s+/).filter(Boolean);
    list.replaceChildren();
    if (!asked.length) { results.hidden = true; return; }
    if (!texts) { say("Reading the index."); load(); return; }
    const met = texts.filter((one) => asked.every((word) => one.all.includes(word)));
    met.sort((one, other) => rank(one, asked, whole) - rank(other, asked, whole));
    say(`${met.length} found${met.length > most ? `, the first ${most} shown` : ""}`);
    for (const one of met.slice(0, most)) {
      const link = document.createElement("a");
      link.href = up + one.place;
      link.textContent = one.name;
      const says = document.createElement("small");
      says.textContent = one.says;
      const line = document.createElement("li");
      line.append(link, ` ${one.sort}`, says);
      list.append(line);
    }
  }

  form.hidden = false;
  form.addEventListener("submit", (event) => event.preventDefault());
  words.addEventListener("focus", load);
  words.addEventListener("input", search);
  form.addEventListener("keydown", (event) => {
    if (event.key === "ArrowDown") { event.preventDefault(); list.querySelector("a")?.focus(); }
    if (event.key === "Escape") { words.value = ""; search(); }
  });
  results.addEventListener("keydown", (event) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!step) return;
    const links = [...list.querySelectorAll("a")];
    const at = links.indexOf(document.activeElement) + step;
    event.preventDefault();
    (at < 0 ? words : links[Math.min(at, links.length - 1)]).focus();
  });
  results.addEventListener("click", (event) => { if (event.target.closest("a")) results.hidden = true; });
  document.documentElement.dataset.ready = "yes";
})();
