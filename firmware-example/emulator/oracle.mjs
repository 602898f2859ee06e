// Asks the host's `expect` what the readout should show.
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';

export class Oracle {
  constructor(program) {
    this.child = spawn(program, [], { stdio: ['pipe', 'pipe', 'inherit'] });
    this.waiting = [];
    createInterface({ input: this.child.stdout }).on('line', (line) => this.waiting.shift().resolve(line));
    this.child.on('exit', (code) => {
      for (const { reject } of this.waiting) reject(new Error(`expect ended with ${code}`));
    });
  }

  /** The answer to a question. */
  ask(...words) {
    return new Promise((resolve, reject) => {
      this.waiting.push({ resolve, reject });
      this.child.stdin.write(`${words.join(' ')}\n`);
    }).then((answer) => {
      if (answer.startsWith('error')) throw new Error(`${words.join(' ')}: ${answer}`);
      return answer;
    });
  }

  /** The approach as it is: what, turns, counts, picture. */
  async move() {
    const [what, turns, counts, picture] = (await this.ask('move')).split(' ');
    return { what, turns: Number(turns), counts: Number(counts), picture };
  }

  async bytes(...words) {
    return Uint8Array.from(Buffer.from(await this.ask(...words), 'hex'));
  }

  end() { this.child.stdin.end(); }
}
