/*
 * How wide letters are on paper. Figures are those of the standard fonts' public metric files (Helvetica and Helvetica-Bold,
 * in thousandths of the size), taken from the tables of the library that writes PDF; a test holds them to it.
 */

type Widths = Readonly<Record<number, string>>;

const PLAIN: Widths = {
  191: "'",
  222: 'ijl‘’‚',
  260: '|¦',
  278: ' !,./:;I[\\]ft ·ÌÍÎÏìíîï',
  333: '()-`r¡¨¯²³´¸¹ˆ˜“”„‹›',
  334: '{}',
  350: '•',
  355: '"',
  365: 'º',
  370: 'ª',
  389: '*',
  400: '°',
  469: '^',
  500: 'JcksvxyzçýÿšŸž',
  537: '¶',
  556: '#$0123456789?L_abdeghnopqu¢£¤¥§«µ»àáâãäåèéêëðñòóôõöùúûüþƒ–†‡€',
  584: '+<=>~¬±×÷',
  611: 'FTZ¿ßøŽ',
  667: '&ABEKPSVXYÀÁÂÃÄÅÈÉÊËÝÞŠ',
  722: 'CDHNRUwÇÐÑÙÚÛÜ',
  737: '©®',
  778: 'GOQÒÓÔÕÖØ',
  833: 'Mm',
  834: '¼½¾',
  889: '%æ',
  944: 'Wœ',
  1000: 'ÆŒ—…‰™',
  1015: '@',
};

const BOLD: Widths = {
  238: "'",
  278: ' ,./I\\ijl ·ÌÍÎÏìíîï‘’‚',
  280: '|¦',
  333: '!()-:;[]`ft¡¨¯²³´¸¹ˆ˜‹›',
  350: '•',
  365: 'º',
  370: 'ª',
  389: '*r{}',
  400: '°',
  474: '"',
  500: 'zž“”„',
  556: '#$0123456789J_aceksvxy¢£¤¥§«¶»àáâãäåçèéêëýÿšŸƒ–†‡€',
  584: '+<=>^~¬±×÷',
  611: '?FLTZbdghnopquµ¿ßðñòóôõöøùúûüþŽ',
  667: 'EPSVXYÈÉÊËÝÞŠ',
  722: '&ABCDHKNRUÀÁÂÃÄÅÇÐÑÙÚÛÜ',
  737: '©®',
  778: 'GOQwÒÓÔÕÖØ',
  833: 'M',
  834: '¼½¾',
  889: '%mæ',
  944: 'Wœ',
  975: '@',
  1000: 'ÆŒ—…‰™',
};

const tableOf = (widths: Widths): ReadonlyMap<string, number> =>
  new Map(
    Object.entries(widths).flatMap(([width, letters]) =>
      Array.from(letters, (letter) => [letter, Number(width) / 1000] as const),
    ),
  );

const TABLES = { plain: tableOf(PLAIN), bold: tableOf(BOLD) };

/** Signs that the standard fonts lack, and what stands for them. */
const TWINS: Readonly<Record<string, string>> = {
  '−': '–',
  '≥': 'at least ',
  '≤': 'at most ',
  '→': '-',
  '≈': '~',
  '′': "'",
  '″': '"',
  Ł: 'L',
  ł: 'l',
  đ: 'd',
  Đ: 'D',
  ı: 'i',
};

/**
 * A text in the letters that paper has: those of Western Europe. A letter with marks that they lack loses its marks, any other
 * becomes a question mark, so that nobody takes a name for another.
 */
export function printable(text: string): string {
  const one = (letter: string): string => {
    if (TABLES.plain.has(letter)) return letter;
    const twin = TWINS[letter];
    if (twin !== undefined) return twin;
    if (/\s/u.test(letter)) return ' ';
    const bare = Array.from(letter.normalize('NFKD'))
      .filter((part) => TABLES.plain.has(part))
      .join('');
    return bare === '' ? '?' : bare;
  };
  return Array.from(text.normalize('NFC'), one).join('');
}

/** How wide a printable text is, in the unit of its size. */
export function textWidth(text: string, size: number, bold = false): number {
  const table = bold ? TABLES.bold : TABLES.plain;
  let sum = 0;
  for (const letter of text) sum += table.get(letter) ?? 0.556;
  return sum * size;
}

/** A text in lines no wider than there is room; a word that is too long by itself is cut. */
export function wrapped(text: string, room: number, size: number, bold = false): readonly string[] {
  const lines: string[] = [];
  let line = '';
  const fits = (words: string): boolean => textWidth(words, size, bold) <= room;
  for (const word of text.split(/\s+/u).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (line !== '' && !fits(line + letter)) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** A text cut to the room there is, with dots where something was left out. */
export function shortened(text: string, room: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= room) return text;
  let kept = text;
  while (kept !== '' && textWidth(`${kept.trimEnd()}…`, size, bold) > room) kept = kept.slice(0, -1);
  return `${kept.trimEnd()}…`;
}
