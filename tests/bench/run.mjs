// npm run bench: all parts, or those named: npm run bench -- units
const PARTS = ['units', 'plan', 'fits', 'plane', 'checks', 'outline', 'volumes'];
const wanted = process.argv.slice(2);
for (const part of wanted.length > 0 ? wanted : PARTS) {
  if (!PARTS.includes(part)) throw new Error(`no such part: ${part}; there is ${PARTS.join(', ')}`);
  console.log(`\n== ${part}`);
  const { run } = await import(`./${part}.mjs`);
  await run();
}
