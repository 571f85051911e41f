import { memo, useMemo } from 'react';
import type { PersonSeen } from '../../assess/person/personAt.ts';
import type { Picture } from '../../draw/person/exposed.ts';
import {
  faceOf,
  madeOf,
  partWords,
  type PartWords,
  type PersonNamed,
} from '../../draw/person/personWords.ts';
import {
  personLooked,
  type PartLook,
  type PartPictures,
  type PersonLook,
} from '../../draw/person/personPictures.ts';
import { PixelCanvas } from './PixelCanvas.tsx';
import { usePictures } from './usePictures.ts';
import styles from './person.module.css';

/** Longer sides on the page, px. */
const SIDES = { face: 108, plate: 108, parcel: 76 } as const;
/** A copy in the page's own pixels is no larger than this, px. */
const ACTUAL = 108;

interface PersonCardProps {
  readonly title: string;
  readonly seen: PersonSeen;
  readonly named: PersonNamed;
  readonly look: PersonLook;
  readonly isHere: boolean;
  /** A drag goes on. */
  readonly busy: boolean;
}

/** One lens: its pictures by day and at night, and what they are made of in words. */
export const PersonCard = memo(function PersonCard({
  title,
  seen,
  named,
  look,
  isHere,
  busy,
}: PersonCardProps) {
  const asked = useMemo(() => ({ seen, look }), [seen, look]);
  const { of, pictures } = usePictures(asked, busy);
  const parts = useMemo(() => personLooked(seen, look), [seen, look]);
  const face = faceOf(seen);
  const band = face === undefined ? '' : madeOf(face.day, named);
  return (
    <article className={styles.card} data-here={isHere} aria-label={title} data-behind={of !== asked}>
      <header className={styles.cardHead}>
        <h3 className={styles.cardTitle}>{title}</h3>
        <span className={styles.band}>{band}</span>
      </header>
      <div className={styles.parts}>
        {parts.map((part, at) => (
          <Part
            key={part.seen.part}
            part={part}
            pictures={pictures[at]}
            words={partWords(part, seen.camera, named, look.exposure, look.cap)}
          />
        ))}
        <Actual day={pictures[parts.findIndex((one) => one.seen.part === 'face')]?.day} />
      </div>
    </article>
  );
});

interface PartProps {
  readonly part: PartLook;
  /** Undefined until they are made. */
  readonly pictures: PartPictures | null | undefined;
  readonly words: PartWords;
}

function Part({ part, pictures, words }: PartProps) {
  const kind = part.seen.part;
  return (
    <div className={styles.part} data-part={kind}>
      <div className={styles.pair}>
        {(['day', 'night'] as const).map((when) => (
          <figure key={when} className={styles.figure} data-unseen={words.unseen[when] !== null}>
            <div className={styles.shot}>
              {!pictures ? (
                <div
                  className={styles.none}
                  role="img"
                  aria-label={pictures === null ? `${words.alt[when]} No picture.` : words.alt[when]}
                />
              ) : (
                <PixelCanvas picture={pictures[when]} label={words.alt[when]} side={SIDES[kind]} />
              )}
            </div>
            <figcaption className={styles.caption}>{captionOf(when, part, words.unseen[when])}</figcaption>
          </figure>
        ))}
      </div>
      <p className={styles.words}>
        <b>{words.pixels}</b>
        {words.more.map((one) => (
          <span key={one}>. {one}</span>
        ))}
        .
        {(pictures?.day.step ?? 1) > 1 && (
          <span>
            {' '}
            So near, each square is {pictures?.day.step} × {pictures?.day.step} pixels.
          </span>
        )}
      </p>
    </div>
  );
}

/** "day", "night, infrared", "night, too dark". */
function captionOf(when: 'day' | 'night', { light }: PartLook, unseen: string | null): string {
  if (unseen !== null) return `${when}: ${unseen}`;
  return when === 'day' ? 'day' : `night, ${light?.kind === 'infrared' ? 'infrared' : 'lamp'}`;
}

/** The face as large as the page's own pixels make it. */
function Actual({ day }: { day: Picture | undefined }) {
  if (day === undefined || day.step * Math.max(day.width, day.height) > ACTUAL) return null;
  return (
    <figure className={styles.figure} aria-hidden="true">
      <PixelCanvas picture={day} label="" side={null} />
      <figcaption className={styles.caption}>actual size</figcaption>
    </figure>
  );
}
