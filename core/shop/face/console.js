// The console's one script. Every page works without it; with it: a day sheet says how many entries came
// in and never changes under the hand, "/" finds, arrows walk a table's doors, a password can be
// shown, and on a narrow screen one part of a unit's page stands open at a time.
"use strict";
(() => {
  const cameIn = document.querySelector("#came-in a");
  const mark = document.querySelector("#mark");
  if (cameIn && mark) {
    const words = cameIn.textContent;
    const ask = async () => {
      if (document.hidden) return;
      try {
        const answer = await fetch(mark.href, { headers: { Accept: "application/json" } });
        if (!answer.ok) return;
        const { new: count } = await answer.json();
        if (count > 0) {
          cameIn.textContent = `${count} ${words}`;
          cameIn.hidden = false;
        }
      } catch { /* no answer: asked again next time */ }
    };
    setInterval(ask, 15000);
    document.addEventListener("visibilitychange", ask);
  }
  // Browsers that cannot unfold these for paper by style alone.
  const folded = [...document.querySelectorAll("details.rows:not([open])")];
  if (folded.length > 0) {
    addEventListener("beforeprint", () => folded.forEach((rows) => { rows.open = true; }));
    addEventListener("afterprint", () => folded.forEach((rows) => { rows.open = false; }));
  }
  const parts = [...document.querySelectorAll("details.part")];
  if (parts.length > 0) {
    const narrow = matchMedia("(max-width: 719px)");
    const all = () => parts.forEach((part) => { part.open = true; });
    const one = (open) => parts.forEach((part) => { part.open = part === open; });
    const fit = () => {
      if (!narrow.matches) { all(); return; }
      one(parts.find((part) => `#${part.id}` === location.hash) ?? parts[0]);
    };
    parts.forEach((part) => part.addEventListener("toggle", () => {
      if (narrow.matches && part.open) one(part);
    }));
    narrow.addEventListener("change", fit);
    addEventListener("hashchange", fit);
    addEventListener("beforeprint", all);
    addEventListener("afterprint", fit);
    fit();
  }
  const print = document.querySelector("#print");
  if (print) {
    print.hidden = false;
    print.addEventListener("click", () => window.print());
  }
  const show = document.querySelector("#show-password");
  if (show) {
    const password = document.querySelector("#password");
    show.addEventListener("change", () => { password.type = show.checked ? "text" : "password"; });
  }
  const ticked = document.querySelector("[data-ticked]");
  if (ticked) {
    const form = ticked.closest("form");
    const count = () => {
      const marked = form.querySelectorAll("input[name=tick]:checked").length;
      ticked.querySelector("[data-count]").textContent = marked;
      const words = ticked.querySelector("[data-one]");
      words.textContent = marked === 1 ? words.dataset.one : words.dataset.several;
      ticked.hidden = marked === 0;
    };
    form.addEventListener("change", count);
    count();
  }
  const paper = document.querySelector("[data-paper]");
  if (paper) {
    const lines = [...paper.querySelectorAll(".line")];
    const typed = paper.querySelector("[data-typed]");
    const figures = typed.textContent.split(/\d+/);
    const tell = () => {
      const done = lines.filter((line) => line.querySelector("input:checked")).length;
      typed.textContent = figures[0] + done + figures[1] + lines.length + figures.slice(2).join("");
    };
    paper.addEventListener("change", tell);
    paper.addEventListener("keydown", (event) => {
      const line = event.target.closest(".line");
      if (!line || !/^[1-4]$/.test(event.key) || event.target.matches(".more input, select")) return;
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      const radio = line.querySelectorAll("input[type=radio]")[Number(event.key) - 1];
      radio.checked = true;
      radio.focus();
      tell();
      const more = event.key === "2" ? line.querySelector("select") : event.key === "4" ? line.querySelector(".more input") : null;
      const next = lines[lines.indexOf(line) + 1];
      if (more) more.focus();
      else if (next) next.querySelector("input[type=radio]").focus();
    });
    const photo = document.querySelector("#page-photo");
    const [turn, zoom] = [document.querySelector("[data-turn]"), document.querySelector("[data-zoom]")];
    if (photo && turn && zoom) {
      let turned = 0;
      turn.hidden = zoom.hidden = false;
      turn.addEventListener("click", () => {
        photo.classList.remove(`turn-${turned}`);
        turned = (turned + 1) % 4;
        photo.classList.add(`turn-${turned}`);
      });
      zoom.addEventListener("click", () => photo.classList.toggle("large"));
    }
  }
  const timer = document.querySelector("[data-seconds]");
  if (timer) {
    const ends = Date.now() + 1000 * Number(timer.dataset.seconds);
    const figures = timer.textContent.split(/\d+/);
    setInterval(() => {
      const left = Math.max(0, Math.round((ends - Date.now()) / 1000));
      const told = [Math.floor(left / 60), String(left % 60).padStart(2, "0")];
      timer.textContent = figures[0] + told[0] + figures[1] + told[1] + figures.slice(2).join("");
      if (left === 0) location.reload();
    }, 1000);
  }
  document.addEventListener("keydown", (event) => {
    const at = event.target;
    const typing = at.matches("input, textarea, select");
    if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
      const find = document.querySelector("#find");
      if (find) { event.preventDefault(); find.focus(); }
      return;
    }
    if ((event.key === "ArrowDown" || event.key === "ArrowUp") && at.matches("tbody a")) {
      const doors = [...at.closest("tbody").querySelectorAll("th a, td:first-child a")];
      const place = doors.indexOf(at.closest("tr").querySelector("th a, td:first-child a"));
      const next = doors[place + (event.key === "ArrowDown" ? 1 : -1)];
      if (next) { event.preventDefault(); next.focus(); }
    }
  });
})();
