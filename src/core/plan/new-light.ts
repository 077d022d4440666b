import type { Kit } from './kit.ts';
import { inOrder, orderKeyAtEnd } from './order-key.ts';
import { LIGHT_DEFAULTS } from './setup-defaults.ts';
import type { Light, LightRole } from './setup-schema.ts';

const STANDS: Readonly<Record<LightRole, Pick<Light, 'stops' | 'distanceM' | 'angleDeg'>>> = {
  key: { stops: 0, distanceM: 2, angleDeg: 35 },
  fill: { stops: -1.6, distanceM: 2.5, angleDeg: -10 },
  rim: { stops: -0.5, distanceM: 3, angleDeg: -150 },
  background: { stops: -1, distanceM: 3, angleDeg: 150 },
  cross: { stops: -0.3, distanceM: 3, angleDeg: -110 },
};

/** A light to start from, the first head that is still in the car; null when the kit has no head or modifier. */
export function newLight(
  kit: Kit,
  lights: Readonly<Record<string, Light>>,
  role: LightRole,
): Light | null {
  const heads = inOrder(kit.heads);
  const modifier = inOrder(kit.modifiers)[0];
  const inUse = (headId: string): number =>
    Object.values(lights).reduce(
      (sum, light) => sum + (light.headId === headId ? light.headCount : 0),
      0,
    );
  const head = heads.find(([id, { owned }]) => inUse(id) < owned) ?? heads[0];
  if (head === undefined || modifier === undefined) return null;
  return {
    order: orderKeyAtEnd(lights),
    ...LIGHT_DEFAULTS,
    ...STANDS[role],
    role,
    headId: head[0],
    modifierId: modifier[0],
    diffuser: modifier[1].diffuserStops !== null,
  };
}

/** The role a further light most likely has. */
export function nextRole(lights: Readonly<Record<string, Light>>): LightRole {
  const roles = new Set(Object.values(lights).map(({ role }) => role));
  return (['key', 'fill', 'rim'] as const).find((role) => !roles.has(role)) ?? 'background';
}
