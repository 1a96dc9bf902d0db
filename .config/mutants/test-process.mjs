import { fork } from 'node:child_process';

/** A process that runs test files. It is ended, and another started, when a mutant never ends. */
export class TestProcess {
  #child = null;
  #env;

  constructor(env = {}) {
    this.#env = env;
  }

  async #start() {
    const child = fork('.config/mutants/tests-of-mutants.mjs', {
      env: { ...process.env, ...this.#env },
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    });
    this.#child = child;
    await new Promise((resolve, reject) => {
      child.once('message', resolve);
      child.once('exit', () => reject(new Error('the tests could not be started')));
    });
  }

  /**
   * The first failure, or null; "no end" where `patience` milliseconds pass and no further file is done.
   * Without `patience` it waits.
   */
  async run(task, patience = Infinity) {
    if (this.#child === null) await this.#start();
    const child = this.#child;
    return new Promise((resolve) => {
      let timer;
      const done = (answer) => {
        clearTimeout(timer);
        child.removeAllListeners();
        resolve(answer);
      };
      const wait = () => {
        clearTimeout(timer);
        if (patience < Infinity)
          timer = setTimeout(() => {
            this.stop();
            done({ failure: 'no end' });
          }, patience);
      };
      child.on('message', (message) => (message === 'a file is done' ? wait() : done(message)));
      child.on('exit', () => {
        this.#child = null;
        done({ failure: 'the process broke' });
      });
      wait();
      child.send(task);
    });
  }

  stop() {
    this.#child?.removeAllListeners();
    this.#child?.kill('SIGKILL');
    this.#child = null;
  }
}
