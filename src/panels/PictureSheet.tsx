import { Image } from 'lucide-react';
import { hide } from '../editor/acts.ts';
import type { Editor } from '../editor/editor.ts';
import { changePicture, removePart } from '../editor/partActs.ts';
import { tracedInstead } from '../editor/pictures/photoUses.ts';
import { pictureSettings } from '../editor/settings/pictureSettings.ts';
import { Button } from '../fittings/Button.tsx';
import { TextField } from '../fittings/TextField.tsx';
import type { Picture } from '../plan/plan.ts';
import { Figure } from './Figure.tsx';
import { Group } from './Group.tsx';
import { PhotoCanvas } from './PhotoCanvas.tsx';
import type { PhotoActs } from './photoActs.ts';
import { SettingField } from './SettingField.tsx';
import { SheetHead } from './SheetHead.tsx';
import { SquareEditor } from './SquareEditor.tsx';
import styles from './sheet.module.css';

interface PictureSheetProps {
  readonly editor: Editor;
  readonly picture: Picture;
  readonly bitmap: PhotoActs['bitmap'];
}

const SAYS = {
  site: 'It lies on the ground under the plan and blocks no view.',
  wall: 'It lies on its wall, squared by four points, and blocks no view.',
  photo: 'It is pinned where it was taken.',
} as const;

/** The setting sheet of a picture: the photo itself, how strongly it shows, the scale or the rectangle that points give it. */
export function PictureSheet({ editor, picture, bitmap }: PictureSheetProps) {
  const { id, name, use, file, hidden, locked } = picture;
  return (
    <>
      <SheetHead sign={<Image size={16} />} title={name} kind="Setting sheet" />
      <Group title="Picture">
        <TextField
          label="Name"
          value={name}
          most={120}
          set={(next) => changePicture(editor, picture, { name: next })}
        />
        {use.kind === 'photo' && <PhotoCanvas file={file} words={`Photo ${name}`} bitmap={bitmap} />}
        {use.kind === 'wall' && (
          <>
            <p className={styles.note}>
              Set the four points on the corners of something square in the photo, then type how wide and high
              it is.
            </p>
            <SquareEditor editor={editor} picture={picture} use={use} bitmap={bitmap} />
          </>
        )}
        {pictureSettings(picture).map((setting) => (
          <SettingField key={setting.key} editor={editor} subject={name} setting={setting} />
        ))}
        <Figure label="Picture" value={`${file.width} × ${file.height}`} unit="px" />
        {use.kind === 'site' && use.metresPerPixel === null && (
          <p className={styles.note}>
            The picture has no scale. Pick two points of it and type how far apart they are.
          </p>
        )}
        <div className={styles.acts}>
          {use.kind === 'site' && (
            <Button
              look={use.metresPerPixel === null ? 'main' : 'plain'}
              press={() => {
                editor.select({ kind: 'picture', id });
                editor.hold('scale');
              }}
            >
              Set the scale
            </Button>
          )}
          {use.kind === 'photo' && (
            <Button
              press={() => {
                changePicture(editor, picture, { use: tracedInstead(use) });
                editor.select({ kind: 'picture', id });
                editor.hold('scale');
              }}
            >
              Trace it instead
            </Button>
          )}
          <Button pressed={hidden} press={() => hide(editor, { kind: 'picture', id }, !hidden)}>
            Hide
          </Button>
          <Button pressed={locked} press={() => changePicture(editor, picture, { locked: !locked })}>
            Locked
          </Button>
          <Button press={() => removePart(editor, { kind: 'picture', id }, name)}>Delete</Button>
        </div>
        <p className={styles.note}>{SAYS[use.kind]}</p>
      </Group>
    </>
  );
}
