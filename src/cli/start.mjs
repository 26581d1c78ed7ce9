// Builds the editor and serves it to this machine: `npm start [-- --port 4173] [-- --no-open]`.
// Nothing newer than Node 14 above the check below, so that an old Node reads the message and not a syntax error.
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`This needs Node.js 20.19 or newer; here it is ${process.versions.node}.`);
  process.exit(1);
}
void import('./serve.mjs').then(({ serve }) => serve(process.argv.slice(2)));
