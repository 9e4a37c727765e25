// The two things that are done to a font file's tables here: reading which characters it has, giving it a name.

/**
 * The tables of an SFNT file by tag.
 * @param {Buffer} font
 * @returns {Map<string, Buffer>}
 */
function tablesOf(font) {
  const tables = new Map();
  for (let at = 0; at < font.readUInt16BE(4); at += 1) {
    const entry = 12 + 16 * at;
    const from = font.readUInt32BE(entry + 8);
    tables.set(font.toString("latin1", entry, entry + 4), font.subarray(from, from + font.readUInt32BE(entry + 12)));
  }
  return tables;
}

/** @param {Buffer} table @param {number} at @param {Map<number, number>} found glyphs by code point */
function readFormat4(table, at, found) {
  const segments = table.readUInt16BE(at + 6) / 2;
  for (let segment = 0; segment < segments; segment += 1) {
    const end = at + 14 + 2 * segment;
    const start = end + 2 + 2 * segments;
    const delta = start + 2 * segments;
    const offset = delta + 2 * segments;
    for (let code = table.readUInt16BE(start); code <= table.readUInt16BE(end) && code < 0xffff; code += 1) {
      const shift = table.readUInt16BE(offset);
      const place = offset + shift + 2 * (code - table.readUInt16BE(start));
      const glyph = shift === 0 ? (code + table.readUInt16BE(delta)) & 0xffff : table.readUInt16BE(place);
      if (glyph !== 0) found.set(code, shift === 0 ? glyph & 0xffff : (glyph + table.readUInt16BE(delta)) & 0xffff);
    }
  }
}

/** @param {Buffer} table @param {number} at @param {Map<number, number>} found glyphs by code point */
function readFormat12(table, at, found) {
  for (let group = 0; group < table.readUInt32BE(at + 12); group += 1) {
    const entry = at + 16 + 12 * group;
    const first = table.readUInt32BE(entry);
    for (let code = first; code <= table.readUInt32BE(entry + 4); code += 1) found.set(code, table.readUInt32BE(entry + 8) + code - first);
  }
}

/**
 * The code points that an SFNT font has a glyph for.
 * @param {Buffer} font
 * @returns {Set<number>}
 */
export function codePointsOf(font) {
  return new Set(glyphsOf(/** @type {Buffer} */ (tablesOf(font).get("cmap"))).keys());
}

/** Glyphs by code point. @param {Buffer} table @returns {Map<number, number>} */
function glyphsOf(table) {
  const found = /** @type {Map<number, number>} */ (new Map());
  for (let at = 0; at < table.readUInt16BE(2); at += 1) {
    const subtable = table.readUInt32BE(4 + 8 * at + 4);
    const format = table.readUInt16BE(subtable);
    if (format === 4) readFormat4(table, subtable, found);
    if (format === 12) readFormat12(table, subtable, found);
  }
  return found;
}

/**
 * The Windows names of an SFNT font by name id.
 * @param {Buffer} font
 * @returns {Map<number, string>}
 */
export function namesOf(font) {
  const table = /** @type {Buffer} */ (tablesOf(font).get("name"));
  const names = new Map();
  for (let at = 0; at < table.readUInt16BE(2); at += 1) {
    const entry = 6 + 12 * at;
    if (table.readUInt16BE(entry) !== 3) continue;
    const from = table.readUInt16BE(4) + table.readUInt16BE(entry + 10);
    const text = Buffer.from(table.subarray(from, from + table.readUInt16BE(entry + 8)));
    names.set(table.readUInt16BE(entry + 6), text.swap16().toString("utf16le"));
  }
  return names;
}

/** @param {ReadonlyMap<number, string>} names */
function nameTable(names) {
  const sorted = [...names].sort(([a], [b]) => a - b);
  const texts = sorted.map(([, text]) => Buffer.from(text, "utf16le").swap16());
  const head = Buffer.alloc(6 + 12 * sorted.length);
  head.writeUInt16BE(sorted.length, 2);
  head.writeUInt16BE(head.length, 4);
  let from = 0;
  sorted.forEach(([id], at) => {
    const length = /** @type {Buffer} */ (texts[at]).length;
    // Windows, Unicode, US English.
    [3, 1, 0x409, id, length, from].forEach((field, index) => {
      head.writeUInt16BE(field, 6 + 12 * at + 2 * index);
    });
    from += length;
  });
  return Buffer.concat([head, ...texts]);
}

/** The sum of a table's 32-bit words. @param {Buffer} table padded to whole words */
function checksum(table) {
  let sum = 0;
  for (let at = 0; at < table.length; at += 4) sum = (sum + table.readUInt32BE(at)) >>> 0;
  return sum;
}

/** @param {Buffer} table */
const padded = (table) => Buffer.concat([table, Buffer.alloc((4 - (table.length % 4)) % 4)]);

/**
 * The font with all its names replaced.
 * @param {Buffer} font
 * @param {ReadonlyMap<number, string>} names by name id
 */
export function withNames(font, names) {
  const tables = tablesOf(font).set("name", nameTable(names));
  const head = Buffer.from(/** @type {Buffer} */ (tables.get("head")));
  head.writeUInt32BE(0, 8);
  tables.set("head", head);
  const sorted = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const directory = Buffer.alloc(12 + 16 * sorted.length);
  font.copy(directory, 0, 0, 4);
  const power = 2 ** Math.floor(Math.log2(sorted.length));
  [sorted.length, power * 16, Math.log2(power), (sorted.length - power) * 16].forEach((field, at) => {
    directory.writeUInt16BE(field, 4 + 2 * at);
  });
  let from = directory.length;
  sorted.forEach(([tag, table], at) => {
    const entry = 12 + 16 * at;
    directory.write(tag, entry, "latin1");
    directory.writeUInt32BE(checksum(padded(table)), entry + 4);
    directory.writeUInt32BE(from, entry + 8);
    directory.writeUInt32BE(table.length, entry + 12);
    from += padded(table).length;
  });
  const file = Buffer.concat([directory, ...sorted.map(([, table]) => padded(table))]);
  const headAt = 12 + 16 * sorted.findIndex(([tag]) => tag === "head");
  // The number that makes the whole file sum up to this constant of the format.
  file.writeUInt32BE((0xb1b0afba - checksum(file)) >>> 0, file.readUInt32BE(headAt + 8) + 8);
  return file;
}

/**
 * Advance widths by code point, in thousandths of the font size.
 * @param {Buffer} font
 * @returns {Map<number, number>}
 */
export function advancesOf(font) {
  const tables = tablesOf(font);
  const [cmap, head, hhea, hmtx] = ["cmap", "head", "hhea", "hmtx"].map((tag) => /** @type {Buffer} */ (tables.get(tag)));
  const unitsPerEm = /** @type {Buffer} */ (head).readUInt16BE(18);
  const metrics = /** @type {Buffer} */ (hhea).readUInt16BE(34);
  const glyphs = glyphsOf(/** @type {Buffer} */ (cmap));
  return new Map(
    [...glyphs].map(([point, glyph]) => {
      const advance = /** @type {Buffer} */ (hmtx).readUInt16BE(4 * Math.min(glyph, metrics - 1));
      return [point, Math.round((1000 * advance) / unitsPerEm)];
    }),
  );
}
