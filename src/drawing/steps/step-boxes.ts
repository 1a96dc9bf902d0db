import type { HoldPoint, WorkStep } from '../../job/steps/work-step.js';
import type { DrawStyle } from '../draw-options.js';
import { textMark } from '../frame/text-label.js';
import { shownName } from '../svg/escape-text.js';
import { line, polygon, rectangle } from '../svg/shapes.js';
import { fitText, STRONG, wrapText } from '../svg/text-width.js';

/** A step as it is drawn. Internal. */
export interface DrawnStep {
  readonly number: number;
  readonly step: WorkStep;
  /** What it waits for, where that is not the step above, and surfaces that must pass. */
  readonly waits: readonly string[];
}

/** The steps with their numbers, and what each waits for. Internal. */
export function drawnSteps(steps: readonly WorkStep[], { label }: DrawStyle): DrawnStep[] {
  const numbers = new Map(steps.map(({ id }, index) => [id, index + 1]));
  return steps.map((step, index) => {
    const after = step.before.flatMap(({ step: id }) =>
      id === null ? [] : (numbers.get(id) ?? []),
    );
    const others = [...new Set(after)].filter((number) => number !== index);
    const surfaces = step.before.flatMap(({ surface }) => (surface === null ? [] : [surface]));
    const list = others.join(', ');
    return {
      number: index + 1,
      step,
      waits: [
        ...(others.length === 0
          ? []
          : [label(others.length === 1 ? 'step-after' : 'step-after-several', { steps: list })]),
        ...[...new Set(surfaces)].map((surface) =>
          label('step-passes', { surface: shownName(fitText(surface, 1, 24)) }),
        ),
      ],
    };
  });
}

const PAD = 9;
const GAP = 16;
const INSET = 4;
const MOST_LINES = 4;

interface Place {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly style: DrawStyle;
}

interface Drawn {
  readonly marks: readonly string[];
  readonly bottom: number;
}

/** A step in its frame, and its hold points below; `isFirst` of its column has no line above. Internal. */
export function stepBox(one: DrawnStep, place: Place, isFirst: boolean): Drawn {
  const { x, top, style } = place;
  const { label, size, small } = style;
  const title = shownName(one.step.title);
  const drawn = textBoxes(
    [
      { text: label('step-title', { number: `${one.number}`, title }), size, style: 'strong step' },
      ...one.waits.map((text) => ({ text, size: small })),
    ],
    { ...place, top },
  );
  const joint = isFirst ? [] : jointMarks(x + 22, top);
  const marks = [...joint, frame('stake', place, top, drawn.bottom), ...drawn.marks];
  return one.step.holdPoints.reduce<Drawn>(
    (above, hold) => {
      const held = holdBox(hold, { ...place, top: above.bottom + GAP });
      return { marks: [...above.marks, ...held.marks], bottom: held.bottom };
    },
    { marks, bottom: drawn.bottom },
  );
}

/** A hold point in a double frame, with the word. */
function holdBox(hold: HoldPoint, place: Place): Drawn {
  const { x, width, top, style } = place;
  const text = style.label('hold-signed', {
    who: whoSigns(hold, style),
    note: shownName(hold.note),
  });
  const drawn = textBoxes([{ text, size: style.small, style: 'strong hold' }], place, PAD + INSET);
  const inner = { ...place, x: x + INSET, width: width - 2 * INSET };
  return {
    marks: [
      ...jointMarks(x + 22, top),
      frame('hold-frame', place, top, drawn.bottom),
      frame('stake', inner, top + INSET, drawn.bottom - INSET),
      ...drawn.marks,
    ],
    bottom: drawn.bottom,
  };
}

const WHO = {
  'crew leader': 'who-crew-leader',
  'competent person': 'who-competent-person',
  'person who accepts the work': 'who-person-who-accepts-the-work',
} as const;

/** Who signs a hold point. Internal. */
export const whoSigns = ({ who }: HoldPoint, { label }: DrawStyle): string => label(WHO[who]);

const frame = (name: string, { x, width }: Place, top: number, bottom: number): string =>
  rectangle(name, { x, y: top, width, height: bottom - top });

/** An arrow down to a box. */
const jointMarks = (x: number, top: number): string[] => [
  line('edge', [x, top - GAP], [x, top]),
  polygon('solid', [
    [x, top],
    [x - 4, top - 7],
    [x + 4, top - 7],
  ]),
];

/** Texts one below the other, with room around them. */
function textBoxes(
  texts: readonly { readonly text: string; readonly size: number; readonly style?: string }[],
  { x, width, top }: Place,
  pad = PAD,
): Drawn {
  const marks: string[] = [];
  let y = top + pad - 3;
  for (const { text, ...of } of texts) {
    const room = width - 2 * (PAD + INSET);
    const free = of.style === undefined ? room : room / STRONG;
    for (const one of wrapText(text, of.size, free, MOST_LINES)) {
      y += of.size * 1.3;
      marks.push(textMark({ text: one, x: x + PAD + INSET, y, ...of }));
    }
  }
  return { marks, bottom: y + pad };
}

/** Clear height between two boxes. Internal. */
export const STEP_GAP = GAP;
