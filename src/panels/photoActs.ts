/** What sheets may do with photos. */
export interface PhotoActs {
  /** Gives the picture with these bytes; null where the device has none. */
  bitmap(sha: string): Promise<ImageBitmap | null>;
  /** Asks for a photo and lays it over a wall, to be squared by four points. */
  square(structure: string, face: number): void;
}
