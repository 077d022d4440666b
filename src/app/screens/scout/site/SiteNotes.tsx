import './site.css';
import { memo, type ReactNode } from 'react';

import { editSpot } from '../../../../core/plan/edits.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { CheckList } from './CheckList.tsx';
import { ContactList } from './ContactList.tsx';
import { SiteFields } from './SiteFields.tsx';
import { siteLines } from './site-lines.ts';
import { HAZARD_WORDS, permissionGap } from './site-words.ts';
import { SurfaceList } from './SurfaceList.tsx';

type SiteNotesProps = { readonly spotId: string; readonly spot: Spot; readonly date: string };

/** What the ground reflects, how to get there, whom to ask, and what to look out for. */
export const SiteNotes = memo(function SiteNotes({
  spotId,
  spot,
  date,
}: SiteNotesProps): ReactNode {
  const edit = useEditShoot();
  const put = (what: string, fields: Partial<Spot>): void =>
    edit(`${what} of ${spot.name}`, editSpot(spotId, fields));
  const gap = permissionGap(spot, date);
  return (
    <section aria-labelledby="on-the-ground">
      <h2 id="on-the-ground">On the ground</h2>
      <Hazards spot={spot} />
      {gap === null ? null : (
        <p className="caution" data-figure="permission-gap" role="status">
          Permission: {gap}
        </p>
      )}
      <dl className="ground-lines" data-figure="ground-lines">
        {siteLines(spot).map(([name, text]) => (
          <div key={name}>
            <dt className="quiet">{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <p className="quiet">
        Notes only: local rules and the land manager decide what is allowed here, and what is noted
        says nothing about safety.
      </p>
      <details>
        <summary data-open="ground">Change ground and access</summary>
        <SiteFields spot={spot} put={put} />
      </details>
      <details>
        <summary data-open="surfaces">Surfaces to bounce from</summary>
        <SurfaceList spotId={spotId} spot={spot} put={put} />
      </details>
      <details>
        <summary data-open="contacts">Contacts, as roles</summary>
        <ContactList spotId={spotId} spot={spot} />
      </details>
      <details>
        <summary data-open="checklist">List for the scouting visit</summary>
        <CheckList spotId={spotId} spot={spot} />
      </details>
    </section>
  );
});

function Hazards({ spot }: { readonly spot: Spot }): ReactNode {
  const marked = Object.entries(HAZARD_WORDS).filter(
    ([hazard]) => spot.hazards[hazard as keyof Spot['hazards']],
  );
  if (marked.length === 0 && spot.hazardsNote === '') return null;
  return (
    <div className="caution" data-figure="hazards">
      {spot.hazardsNote === '' ? null : <p>{spot.hazardsNote}</p>}
      {marked.map(([hazard, { caution }]) => (
        <p key={hazard}>{caution}</p>
      ))}
    </div>
  );
}
