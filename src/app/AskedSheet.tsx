import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import type { Versions } from '../editor/versions.ts';
import { reportText } from '../exchange/reportText.ts';
import { KeysSheet } from '../panels/KeysSheet.tsx';
import { OpenSheet } from '../panels/OpenSheet.tsx';
import { PagesSheet } from '../panels/PagesSheet.tsx';
import { ReportSheet } from '../panels/ReportSheet.tsx';
import { ShapesSheet } from '../panels/ShapesSheet.tsx';
import { SurveySheet } from '../panels/SurveySheet.tsx';
import { VersionsSheet } from '../panels/VersionsSheet.tsx';
import type { DeskStore } from './desk.ts';
import type { Openings } from './opening.ts';

interface AskedSheetProps {
  readonly editor: Editor;
  readonly desk: DeskStore;
  readonly openings: Openings;
  readonly versions: Versions;
}

/** A sheet that was asked for: the ways in, keys, versions, shapes, what to measure. */
export function AskedSheet({ editor, desk, openings, versions }: AskedSheetProps) {
  const { sheet, kept, imported, pages } = useStore(desk);
  const credits = useStore(editor.store, ({ plan }) => plan.credits);
  const close = () => desk.setState({ sheet: 'setting', drawer: false });
  if (sheet === 'open')
    return (
      <OpenSheet
        kept={kept}
        choose={openings.choose}
        sample={openings.sample}
        empty={openings.empty}
        openKept={openings.kept}
        forget={openings.forget}
        close={close}
      />
    );
  if (sheet === 'versions') return <VersionsSheet editor={editor} versions={versions} close={close} />;
  if (sheet === 'shapes') return <ShapesSheet editor={editor} close={close} />;
  if (sheet === 'survey') return <SurveySheet editor={editor} close={close} />;
  if (sheet === 'pages' && pages) return <PagesSheet {...pages} />;
  if (sheet === 'keys') return <KeysSheet editor={editor} close={close} />;
  if (sheet === 'report' && imported)
    return (
      <ReportSheet
        file={imported.name}
        sentences={reportText(imported.report)}
        credits={credits}
        close={close}
      />
    );
  return null;
}
