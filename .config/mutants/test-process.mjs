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
   * The first failure, or null; "no end" where the process has used `patience` milliseconds of processor
   * time and no further file is done. Without `patience` it waits. A clock would not do: on a busy machine
   * a fresh process takes minutes to load the sources.
   */
  async run(task, patience = Infinity) {
    if (this.#child === null) await this.#start();
    const child = this.#child;
    return new Promise((resolve) => {
      let spentBefore;
      const done = (answer) => {
        child.removeAllListeners();
        resolve(answer);
      };
      child.on('message', (message) => {
        if (message === 'a file is done') spentBefore = undefined;
        else if (message.spent === undefined) done(message);
        else if (message.spent - (spentBefore ??= message.spent) > patience) {
          this.stop();
          done({ failure: 'no end' });
        }
      });
      child.on('exit', () => {
        this.#child = null;
        done({ failure: 'the process broke' });
      });
      child.send(task);
    });
  }

  stop() {
    this.#child?.removeAllListeners();
    this.#child?.kill('SIGKILL');
    this.#child = null;
  }
}
