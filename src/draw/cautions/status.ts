const PRACTICE = 'common practice, no source';

/** Rows whose rule or figure has a source, or was quoted from memory; all others are common practice. */
const STATUS: Readonly<Record<number, string>> = {
  1: `${PRACTICE}; pictures for documents ask for 5° (ISO/IEC 19794-5:2011, as a face-analysis library’s manual quotes it)`,
  2: `${PRACTICE}: about 15° is good, 20 to 30° the usual outer limit`,
  3: `limits ${PRACTICE}; a character is 79 mm high (Road Vehicles (Display of Registration Marks) Regulations 2001, as several pages quote them)`,
  5: `the sum is exact; its limits are ${PRACTICE}`,
  7: `depth of field from Greenleaf, Photographic Optics, 1950, quoted from memory; circle of confusion ${PRACTICE}`,
  10: 'arithmetic',
  12: `the law is that of a point source, any lighting text, quoted from memory; its limits are ${PRACTICE}`,
  16: `sun by the low-precision formulae of the Astronomical Almanac, quoted from memory; limit ${PRACTICE}`,
  20: `${PRACTICE}: a stated infrared range has no standard test behind it`,
  29: `${PRACTICE}; IK10 is 20 J by IEC 62262, as several repository notes quote it`,
  32: 'lines and bands of BS 7671, regulations 522.6.201 and 522.6.202 (UK), as electricians’ pages quote them; meter: common practice, no source',
  33: `Control of Asbestos Regulations 2012 (UK), quoted from memory: check before print; timber ${PRACTICE}`,
  34: `one out for four up by HSE and Ladder Association guidance LA455 (UK), as notes quote it; distances of lines quoted from memory: check before print; 5 m ${PRACTICE}`,
  38: `${PRACTICE}; mains and earths are for licensed or competent persons (quoted from memory)`,
  39: `power by class of IEEE 802.3af, at and bt, from a network-equipment manual; spare ${PRACTICE}`,
  40: 'GDPR and UK GDPR, article 2(2), and Court of Justice C-212/13, as pages of data-protection authorities quote them; local law decides',
};

/** Where a row of the table comes from, spelled out. */
export const statusWords = (row: number): string => STATUS[row] ?? PRACTICE;
