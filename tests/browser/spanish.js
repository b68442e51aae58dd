// Finds English on a Spanish page by the texts themselves: what a text says in English and no text says in
// Spanish may not stand there.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const FOLDERS = ["../../core/shop/texts", "../../core/daybook/texts"];

/** Texts of one language by key, each with its forms; only what Fluent's simple syntax holds is used here. */
const texts = (language) => {
  const found = new Map();
  for (const folder of FOLDERS) {
    const of = join(folder, language);
    for (const file of readdirSync(of).filter((name) => name.endsWith(".ftl"))) {
      let key = "";
      for (const line of readFileSync(join(of, file), "utf8").split("\n")) {
        const head = line.match(/^([a-z][\w-]*) = (.*)$/);
        const form = line.match(/^\s+\*?\[[\w.]+\] (.*)$/);
        if (head) key = head[1];
        const said = head ? head[2] : form ? form[1] : "";
        if (key && said && !said.endsWith("->")) found.set(key, [...(found.get(key) ?? []), said.trim()]);
      }
    }
  }
  return found;
};

const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
/** What a text with places in it looks like when it is said. */
const shape = (text) => escaped(text).replace(/\\\{[^}]*\\\}/g, ".+");

const english = texts("en");
const spanish = texts("es");
const saidInSpanish = new Set([...spanish.values()].flat());
const patterns = [...english.entries()]
  .flatMap(([key, forms]) => forms.map((said) => ({ key, said })))
  // A text that is the same in both, or is nothing but a place, tells nothing.
  .filter(({ said }) => !saidInSpanish.has(said) && /[a-z]{2}/i.test(said.replace(/\{[^}]*\}/g, "")))
  .map(({ key, said }) => ({ key, pattern: new RegExp(`^${shape(said)}$`), words: said.replace(/\{[^}]*\}/g, "").trim() }))
  .filter(({ words }) => words.length > 2);
// What a Spanish text with places in it says may look like an English one; one that is nothing but places looks like all.
const known = [...spanish.values()]
  .flat()
  .filter((said) => said.includes("{") && /\p{L}{4}/u.test(said.replace(/\{[^}]*\}/g, "")))
  .map((said) => new RegExp(`^${shape(said)}$`));

/** What is English among the words a reader of the page sees or hears, with the text it comes from. */
export const englishOn = async (page) => {
  const seen = await page.evaluate(() => {
    const all = [];
    const foreign = (element) => element.closest("[lang]")?.getAttribute("lang") !== "es";
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      if (node.nodeType === Node.TEXT_NODE) {
        if (!foreign(node.parentElement)) all.push(node.textContent);
      } else if (!foreign(node)) {
        for (const name of ["aria-label", "title", "placeholder", "alt"]) all.push(node.getAttribute(name) ?? "");
      }
    }
    return [...new Set(all.map((text) => text.replace(/\s+/g, " ").trim()).filter(Boolean))];
  });
  const title = await page.title();
  return [...seen, title.split(" · ")[0]].flatMap((text) => {
    if (known.some((pattern) => pattern.test(text))) return [];
    const of = patterns.find(({ pattern }) => pattern.test(text));
    return of ? [`${text} (${of.key})`] : [];
  });
};

/** How many texts it knows to look for. */
export const looksFor = patterns.length;
