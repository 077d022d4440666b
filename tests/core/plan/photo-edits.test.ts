import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { together } from '../../../src/core/plan/edits.ts';
import { applyEdit } from '../../../src/core/plan/history.ts';
import {
  addPhoto,
  addReading,
  editPhoto,
  removePhoto,
  removeReading,
} from '../../../src/core/plan/photo-edits.ts';
import { plainPhoto } from '../../support/plain-photo.ts';

const reading = {
  order: 'n',
  atMs: null,
  ev100: 13,
  bearingDeg: null,
  from: 'photo',
  photoId: 'p',
  note: '',
} as const;

const { document: shoot } = applyEdit(
  demoShoot(),
  together(
    addPhoto('pier', 'p', plainPhoto),
    addPhoto('pier', 'q', { ...plainPhoto, name: 'scout-02.jpg' }),
    addReading('pier', 'r', reading),
    addReading('pier', 'meter', { ...reading, from: 'meter', photoId: null }),
  ),
);

describe('photos and readings of a spot', () => {
  test('are added, changed and taken away one by one', () => {
    const { document } = applyEdit(
      shoot,
      together(editPhoto('pier', 'p', { note: 'low tide' }), removeReading('pier', 'meter')),
    );
    expect(document.spots['pier']?.photos['p']).toEqual({ ...plainPhoto, note: 'low tide' });
    expect(Object.keys(document.spots['pier']?.readings ?? {})).toEqual(['r']);
  });

  test('a photo goes with the readings it made, and the meter’s stay', () => {
    const { document } = applyEdit(shoot, removePhoto('pier', 'p'));
    expect(Object.keys(document.spots['pier']?.photos ?? {})).toEqual(['q']);
    expect(Object.keys(document.spots['pier']?.readings ?? {})).toEqual(['meter']);
  });

  test('nothing happens at a spot that is not there', () => {
    for (const edit of [
      addPhoto('gone', 'p', plainPhoto),
      editPhoto('gone', 'p', { note: 'x' }),
      removePhoto('gone', 'p'),
      addReading('gone', 'r', reading),
      removeReading('gone', 'r'),
    ])
      expect(applyEdit(shoot, edit).patches).toEqual([]);
  });
});
