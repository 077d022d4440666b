import { produce } from 'immer';
import { expect, test } from 'vitest';

import { checkDocument } from '../../../src/core/plan/check-document.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { SHOOT } from '../../../src/core/plan/shoot.ts';
import { editSiteEntry, putSiteEntry, removeSiteEntry } from '../../../src/core/plan/site-edits.ts';

const contact = { order: 'm', role: 'Harbour master', note: 'mornings' };

test('a contact is noted, changed and taken away, and the shoot keeps its schema', () => {
  const noted = produce(demoShoot(), putSiteEntry('pier', 'contacts', 'one', contact));
  expect(noted.spots.pier?.contacts.one).toEqual(contact);
  expect(checkDocument(SHOOT, noted).ok).toBe(true);
  const changed = produce(noted, editSiteEntry('pier', 'contacts', 'one', { note: 'channel 12' }));
  expect(changed.spots.pier?.contacts.one).toEqual({ ...contact, note: 'channel 12' });
  expect(produce(changed, removeSiteEntry('pier', 'contacts', 'one'))).toEqual(demoShoot());
});

test('an entry or a spot that is gone in the meantime changes nothing', () => {
  const shoot = demoShoot();
  expect(produce(shoot, putSiteEntry('gone', 'contacts', 'one', contact))).toBe(shoot);
  expect(produce(shoot, editSiteEntry('pier', 'checklist', 'gone', { done: true }))).toBe(shoot);
});
