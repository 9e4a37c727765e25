// Persons by their names as written in the title block and in the marks.

/** Case, points and doubled spaces do not make two persons of one; an empty name is nobody. */
export function samePerson(a: string, b: string): boolean {
  const [one, two] = [plain(a), plain(b)];
  return one !== "" && one === two;
}

const plain = (name: string): string => name.normalize("NFKC").replaceAll(".", " ").trim().replace(/\s+/g, " ").toLowerCase();
