// The answers of a demo client's file, by the keys that boxes have; its record is left out, and what
// the page asks by screens of their own is given apart. Only what demo files hold is read: tables,
// lists of tables, one-line values.
const HEAD = /^\[(\[)?([\w.]+)\]/;

/** One value: a word, a number, a truth, a list of words or a small table. */
function value(text) {
  const bare = text.replace(/\s+#.*$/, "").trim();
  if (bare.startsWith("{")) {
    return Object.fromEntries([...bare.matchAll(/(\w+) = ("[^"]*"|[^,}\s]+)/g)].map(([, key, own]) => [key, value(own)]));
  }
  if (bare.startsWith("[")) return [...bare.matchAll(/"([^"]*)"/g)].map((own) => own[1]);
  return bare.startsWith('"') ? bare.slice(1, bare.indexOf('"', 1)) : bare;
}

export function read(file) {
  const answers = {};
  const goals = [];
  const cushion = {};
  const entries = {};
  let at = "";
  const lists = file.replace(/= \[\n((?: {2}.*\n)+)\]/g, (_, inner) => `= [${inner.replace(/\n/g, " ")}]`);
  for (const line of lists.split("\n")) {
    const head = line.match(HEAD);
    if (head) {
      at = head[2];
      if (at === "record") break;
      if (head[1]) {
        entries[at] = (entries[at] ?? 0) + 1;
        if (at === "goal") goals.push({});
        at = `${at}.${entries[at]}`;
      }
      continue;
    }
    const pair = line.match(/^(\w+) = (.*)$/);
    if (!pair) continue;
    const [, key, text] = pair;
    const own = value(text);
    if (["format", "kind", "client", "units"].includes(key)) continue;
    if (at.startsWith("goal.")) goals.at(-1)[key] = own;
    else if (at === "cushion") cushion[key] = own;
    else if (Array.isArray(own)) { if (own.length) answers[[at, key].join(".")] = own.join("\n"); }
    else if (typeof own === "object") for (const [part, inner] of Object.entries(own)) answers[[at, key, part].join(".")] = inner;
    else answers[at ? `${at}.${key}` : key] = own;
  }
  return { answers, goals, cushion };
}
