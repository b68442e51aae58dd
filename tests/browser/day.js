// What phones add to the day while the console is open: recorded on their own folders, sent over TLS.

import { join } from "node:path";
import { NOW } from "./demo.js";

/** Who drives what, with which phone. */
export const CREWS = {
  "TH-01": { person: "Amos Tillery", phone: "yard-phone-1" },
  "TH-02": { person: "Bettina Quaye", phone: "yard-phone-2" },
  "TH-03": { person: "Carmelo Ruiz", phone: "yard-phone-4" },
  "TH-04": { person: "Edric Loomis", phone: "yard-phone-7" },
};

/** A driver finds a defect at the end of the day and the phone hands it over. */
export const tellDefect = async (demo, unit, defect) => {
  const { person, phone } = CREWS[unit];
  const folder = join(demo.folder, phone);
  const answer = { answer: "defect", ...defect };
  await demo.record(folder, [
    { unit, person, kind: "end-of-day", body: { defects: [answer], "none-found": false } },
  ]);
  await exchange(demo, folder);
};

/** A phone hands over what it has. */
export const exchange = (demo, folder, at = NOW) => demo.phone(folder, "exchange", "--now", at);

/** Once for each demo: two defects wait for a certificate, one of them locks the road. */
export const somethingToDo = async (demo) => {
  demo.toDo ??= (async () => {
    await tellDefect(demo, "TH-03", { item: "mirrors", place: "right", word: "cracked", words: "hairline, low corner" });
    await tellDefect(demo, "TH-02", { item: "lamps-stop", place: "rear", word: "out", words: "left stop lamp" });
  })();
  await demo.toDo;
};
