export { nodeThreads } from './node-threads.js';
