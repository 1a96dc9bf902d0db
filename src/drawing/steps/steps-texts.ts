/** The English labels of the steps of work. */
export const STEPS_TEXTS = {
  'steps-title': 'Order of work',
  'steps-note':
    'Read down. A double frame is a hold point: work goes on when it is signed. The steps of work of the sheet have what else must be true first.',
  'steps-waits': 'A step waits for the one above it, unless it names another.',
  'step-title': '{number}. {title}',
  'step-after': 'after step {steps}',
  'step-after-several': 'after steps {steps}',
  'step-passes': 'when {surface} passes its check',
  'hold-signed': 'HOLD: {who} signs. {note}',
  'who-crew-leader': 'crew leader',
  'who-competent-person': 'competent person',
  'who-person-who-accepts-the-work': 'person who accepts the work',
  'mark-step': 'step of work',
  'mark-hold': 'hold point: to be signed',
  'describe-steps': '{count} steps, {holds} hold points. {list}',
  'describe-step': '{number}. {title}.',
  'describe-hold': '{number}. {title}. Hold: {who} signs.',
} as const;
