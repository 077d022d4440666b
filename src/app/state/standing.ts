import { useEffect, useMemo, useState } from 'react';

import { inOrder } from '../../core/plan/order-key.ts';
import type { OutlineSet } from '../../core/plan/obstacle-schema.ts';
import type { Obstacle } from '../../core/skyline/obstacle.ts';
import { useShoot } from './documents.tsx';

/** Something on the ground of the open shoot: drawn, or one outline of an import. */
export type Standing = {
  readonly key: string;
  readonly name: string;
  readonly obstacle: Obstacle;
  /** Where it is kept: an obstacle of its own, or the number of an outline in a set. */
  readonly from:
    | { readonly kind: 'own'; readonly id: string }
    | { readonly kind: 'imported'; readonly setId: string; readonly index: number };
};

type Parsed = { readonly geoJson: string; readonly outlines: readonly Standing[] };
