// What may not be used, and where: names of the surroundings in engine and library, ways to run text or markup anywhere.

/** Same input, same bits: nothing here may reach a page, a clock, a locale, randomness, storage or the system. */
const AMBIENT = new Set(
  `window document navigator location history screen self globalThis postMessage alert confirm prompt getComputedStyle matchMedia
  customElements DOMParser MutationObserver ResizeObserver Worker SharedWorker MessageChannel BroadcastChannel Element NodeList
  localStorage sessionStorage indexedDB caches fetch XMLHttpRequest WebSocket EventSource requestAnimationFrame requestIdleCallback
  Date performance setTimeout setInterval setImmediate crypto Intl process Buffer require console
  Math.random .localeCompare .toLocaleString .toLocaleUpperCase .toLocaleLowerCase .toLocaleDateString .toLocaleTimeString`.split(/\s+/),
);
const MARKUP_CLASS = /^(HTML|SVG)[A-Z]\w*$/;

/** Text that becomes code or markup. */
const UNSAFE = new Set(
  "eval Function .innerHTML .outerHTML .insertAdjacentHTML .dangerouslySetInnerHTML .setHTMLUnsafe .createContextualFragment document.write document.writeln".split(
    " ",
  ),
);

export const ambient = (uses: ReadonlySet<string>): readonly string[] =>
  [...uses].filter((name) => AMBIENT.has(name) || MARKUP_CLASS.test(name)).sort();

export const unsafe = (uses: ReadonlySet<string>): readonly string[] => [...uses].filter((name) => UNSAFE.has(name)).sort();
