import { Group } from '../Group.tsx';
import styles from '../sheet.module.css';

/** What stands beside every result, and whom to thank for the map. */
export function BeforeDrilling({ credits }: { credits: readonly string[] }) {
  return (
    <>
      <Group title="Before anyone drills">
        <p className={styles.note}>
          These figures say where there are enough pixels. They are no promise: light, weather, movement and
          the camera itself decide the rest.
        </p>
        <p className={styles.note}>
          Mind ladders, and pipes and cables in walls. Mains work is for a licensed person. Local codes come
          before anything here.
        </p>
        <p className={styles.note}>Neighbours have a right to their privacy: aim at your own ground.</p>
      </Group>
      {credits.length > 0 && (
        <Group title="Map data">
          <ul className={styles.list}>
            {credits.map((credit) => (
              <li key={credit}>{credit}</li>
            ))}
          </ul>
        </Group>
      )}
    </>
  );
}
