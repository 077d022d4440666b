import { useEffect, useMemo, useState } from 'react';

import type { Shoot } from '../../core/plan/shoot.ts';

/**
 * The shoot with the skylines of its spots worked out. Null while the code for it is first fetched,
 * which a shoot that knows traces only does not need; one that is open already stays as it is until then.
 */
export function useGrounded(shoot: Shoot | null): Shoot | null {
  const [ground, setGround] = useState<((shoot: Shoot) => Shoot) | null>(null);
  const [openId, setOpenId] = useState<string | null>(null);
  const needed = shoot !== null && knowsGround(shoot);
  useEffect(
    function fetchGrounder() {
      if (!needed || ground !== null) return undefined;
      let current = true;
      void import('./grounded-shoot.ts').then(({ shootGrounder }) => {
        if (current) setGround(() => shootGrounder());
      });
      return () => {
        current = false;
      };
    },
    [needed, ground],
  );
  const isOpen = shoot !== null && shoot.id === openId;
  const grounded = useMemo(() => {
    if (shoot === null || !needed) return shoot;
    return ground?.(shoot) ?? (isOpen ? shoot : null);
  }, [shoot, needed, ground, isOpen]);
  if (grounded !== null && grounded.id !== openId) setOpenId(grounded.id);
  return grounded;
}

const knowsGround = ({ spots, obstacles, outlineSets }: Shoot): boolean =>
  Object.keys(obstacles).length > 0 ||
  Object.keys(outlineSets).length > 0 ||
  Object.values(spots).some(({ terrain }) => terrain !== null);
