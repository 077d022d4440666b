import type { Triple } from '../colour/chromaticity.ts';
import type { Framing, PicturePoint } from '../sky/framing.ts';
import { projection } from '../sky/framing.ts';
import { atan2Deg } from '../units/angle.ts';
import type { Pose } from './setup-schema.ts';

/** A person of the picture with the linear light of each of its parts. */
export type LitFigure = {
  /** To the camera's right of its axis, and away from the camera. */
  readonly rightM: number;
  readonly awayM: number;
  readonly faceHeightM: number;
  readonly pose: Pose;
  /** True where the key comes from the camera's right. */
  readonly litRight: boolean;
  readonly litSkin: Triple;
  readonly darkSkin: Triple;
  readonly litCloth: Triple;
  readonly darkCloth: Triple;
  /** Edge of hair and shoulder on the left and on the right, null where no light strikes it. */
  readonly leftEdge: Triple | null;
  readonly rightEdge: Triple | null;
};

export type FigureShape = { readonly corners: readonly PicturePoint[]; readonly colour: Triple };

/** Metres from the middle of the face: to the right, and up. */
type Outline = readonly (readonly [rightM: number, upM: number])[];

const HEAD: Outline = Array.from({ length: 24 }, (_, step): readonly [number, number] => {
  const turn = (step / 24) * 2 * Math.PI;
  return [0.08 * Math.sin(turn), 0.12 * Math.cos(turn)];
});

/** Right half of the hair: over the brow, down to the ear. */
const HALF_HAIR: Outline = [
  [0, 0.13],
  [0.045, 0.122],
  [0.075, 0.085],
  [0.088, 0.03],
  [0.084, -0.02],
  [0.074, 0.02],
  [0.06, 0.06],
  [0, 0.075],
];

const NECK: Outline = [
  [-0.05, -0.09],
  [0.05, -0.09],
  [0.06, -0.19],
  [-0.06, -0.19],
];

/** Right half of a body down to its feet or its seat; a person's width is common practice. [lightingPractice] */
const HALF_BODY: Outline = [
  [0, -0.16],
  [0.07, -0.18],
  [0.2, -0.25],
  [0.23, -0.34],
  [0.2, -0.75],
];
const EDGE_M = 0.018;

/** Everything of a figure from back to front, in fractions of the picture; what lies behind the camera is left out. */
export function figureShapes(
  figure: LitFigure,
  framing: Framing,
  cameraHeightM: number,
): readonly FigureShape[] {
  const { toPicture } = projection(framing);
  const place = ([rightM, upM]: readonly [number, number]): PicturePoint | null => {
    const right = figure.rightM + rightM;
    const levelM = Math.hypot(right, figure.awayM);
    return toPicture({
      azimuthDeg: framing.bearingDeg + atan2Deg(right, figure.awayM),
      altitudeDeg: atan2Deg(figure.faceHeightM + upM - cameraHeightM, levelM),
    });
  };
  const shape = (outline: Outline, colour: Triple): readonly FigureShape[] => {
    const corners = outline.map(place).filter((point) => point !== null);
    return corners.length === outline.length ? [{ corners, colour }] : [];
  };
  const side = (right: boolean): readonly FigureShape[] => {
    const lit = right === figure.litRight;
    const way = right ? 1 : -1;
    return [
      ...shape(turned(bodyOf(figure), way), lit ? figure.litCloth : figure.darkCloth),
      ...shape(turned(halved(NECK), way), lit ? figure.litSkin : figure.darkSkin),
      ...shape(turned(halved(HEAD), way), lit ? figure.litSkin : figure.darkSkin),
      ...shape(turned(HALF_HAIR, way), lit ? figure.litCloth : figure.darkCloth),
    ];
  };
  const edges = [
    { way: -1, colour: figure.leftEdge },
    { way: 1, colour: figure.rightEdge },
  ] as const;
  return [
    ...edges.flatMap(({ way, colour }) =>
      colour === null
        ? []
        : [...shape(turned(HAIR_EDGE, way), colour), ...shape(turned(SHOULDER_EDGE, way), colour)],
    ),
    ...side(false),
    ...side(true),
  ];
}

/** The head and the shoulder made wider by an edge; what stands out is what a rim strikes. */
const HAIR_EDGE: Outline = halved(HEAD).map(([right, up]) => [
  right * (1 + EDGE_M / 0.08),
  up * (1 + EDGE_M / 0.12),
]);
const SHOULDER_EDGE: Outline = HALF_BODY.map(([right, up]) => [
  right + (right > 0 ? EDGE_M : 0),
  up + EDGE_M,
]);

function bodyOf({ pose, faceHeightM }: LitFigure): Outline {
  const foot = pose === 'lying' ? -0.4 : -faceHeightM;
  return [...HALF_BODY, [0.18, foot], [0, foot]];
}

function halved(outline: Outline): Outline {
  return outline.filter(([right]) => right >= -1e-9);
}

function turned(outline: Outline, way: 1 | -1): Outline {
  return way === 1 ? outline : outline.map(([right, up]) => [-right, up] as const).toReversed();
}
