// A choice a person made on this page. The browser keeps it, and a cookie of the same name tells the controller, which
// writes the first look itself.

/** A choice among words; `get` gives null until one is made. */
export function choice(name, words) {
  const kept = localStorage.getItem(name);
  let chosen = words.includes(kept) ? kept : null;

  function tell() {
    document.cookie = `${name}=${chosen}; Path=/; Max-Age=31536000; SameSite=Strict`;
  }

  // Anew at each visit: browsers keep a cookie for so long and no longer.
  if (chosen !== null) {
    tell();
  }
  return {
    get: () => chosen,
    set(word) {
      chosen = word;
      localStorage.setItem(name, word);
      tell();
    },
  };
}
