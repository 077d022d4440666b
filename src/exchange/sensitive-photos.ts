import { inOrder } from '../core/plan/order-key.ts';
import type { Spot } from '../core/plan/shoot.ts';
import type { SpotContent } from './sensitive-content.ts';

/** Each photo of a spot with its picture, the place it was taken at, and its note. */
export const sensitivePhotos = (spot: Spot): readonly SpotContent[] =>
  inOrder(spot.photos).flatMap(([id, photo]) => {
    const { name, widthPx, heightPx, latitudeDeg, longitudeDeg, note } = photo;
    const whole: SpotContent = {
      path: ['photos', id],
      what: `${spot.name}, photo`,
      text: widthPx === 0 ? `${name}, without its picture` : `${name}, ${widthPx} × ${heightPx} px`,
      leftOutBy: 'removing',
      onlyIfAsked: false,
      leaveOut: ({ photos, readings }) => {
        delete photos[id];
        for (const reading of Object.values(readings))
          if (reading.photoId === id) reading.photoId = null;
      },
    };
    const place: SpotContent = {
      path: ['photos', id, 'position'],
      text: `${latitudeDeg}, ${longitudeDeg}`,
      leftOutBy: 'emptying',
      onlyIfAsked: true,
      leaveOut: ({ photos }) => {
        if (photos[id] !== undefined)
          Object.assign(photos[id], { latitudeDeg: null, longitudeDeg: null });
      },
    };
    const noted: SpotContent = {
      path: ['photos', id, 'note'],
      text: note,
      leftOutBy: 'emptying',
      onlyIfAsked: false,
      leaveOut: ({ photos }) => {
        if (photos[id] !== undefined) photos[id].note = '';
      },
    };
    return [
      whole,
      ...(latitudeDeg === null && longitudeDeg === null ? [] : [place]),
      ...(note.trim() === '' ? [] : [noted]),
    ];
  });
