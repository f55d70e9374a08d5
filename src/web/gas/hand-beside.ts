/** The found set moved by hand, beside the page: what the page says is done, and the set as it then lies is told. */
import {
  type FoundPrimaries,
  type HandTold,
  type PrimariesByHand,
  type PrimariesSet,
  type SavedHand,
  writePrimaries,
} from '../../questions/index.ts';
import type { HandAnswer, HandDoes } from './protocol.ts';

/** Work of the mending between two looks at what the page says, ms; and the longest that it goes on. */
const PIECE = 60;
const LONGEST = 15_000;

const NOT_FOUND = 'The finder did not find how the rest could give way.';

export class HandBeside {
  private readonly post: (answer: HandAnswer) => void;
  private set: PrimariesByHand | undefined;
  private mending = false;
  private seed = 1;

  constructor(post: (answer: HandAnswer) => void) {
    this.post = post;
  }

  /** What was done to a set is of no other. */
  forget(): void {
    this.mending = false;
    this.set = undefined;
  }

  /** Takes up what was done before. */
  open(finding: Pick<FoundPrimaries, 'byHand'>, saved: SavedHand): void {
    this.set = finding.byHand(saved);
    if (this.set !== undefined) this.rest(this.set.told());
  }

  do(finding: Pick<FoundPrimaries, 'byHand'>, does: HandDoes): void {
    this.mending = false;
    this.set ??= finding.byHand();
    const { set } = this;
    if (set === undefined) return;
    if (does.do === 'pull') {
      this.post({ kind: 'hand', live: true, mending: false, told: set.pull(does.ask) });
      return;
    }
    const told = rested(set, does);
    if (does.do === 'mend' || (does.do === 'let go' && does.mend && told.asked)) this.mend(set, told);
    else this.rest(told);
  }

  private rest(told: HandTold, says?: string): void {
    const { set } = this;
    if (set === undefined) return;
    this.post({
      kind: 'hand',
      live: false,
      mending: this.mending,
      told,
      ...(says === undefined ? {} : { says }),
      file: writePrimaries(set.solution),
      saved: set.saved,
    });
  }

  private mend(set: PrimariesByHand, told: HandTold): void {
    this.mending = true;
    this.rest(told);
    const advance = set.mend(this.seed++);
    const end = performance.now() + LONGEST;
    const go = (): void => {
      if (!this.mending || this.set !== set) return;
      const until = performance.now() + PIECE;
      let stands = advance();
      while (stands === 'mending' && performance.now() < until) stands = advance();
      if (stands === 'mending' && performance.now() < end) {
        setTimeout(go);
        return;
      }
      this.mending = false;
      if (stands === 'stands') this.rest(set.told(), gaveWay(told.set, set.told().set));
      else this.rest({ ...told, stop: told.stop === undefined ? NOT_FOUND : `${told.stop} ${NOT_FOUND}` });
    };
    setTimeout(go);
  }
}

function rested(set: PrimariesByHand, does: Exclude<HandDoes, { do: 'pull' }>): HandTold {
  switch (does.do) {
    case 'let go':
      return set.letGo();
    case 'keep':
      return set.keep(does.what, does.on);
    case 'undo':
      return set.undo();
    case 'redo':
      return set.redo();
    case 'found':
      return set.backToFound();
    case 'take':
    case 'mend':
      return set.told();
  }
}

function gaveWay(before: PrimariesSet, after: PrimariesSet): string {
  const changed = after.pipes.filter(
    ({ line }, k) => JSON.stringify(line) !== JSON.stringify(before.pipes[k]?.line),
  );
  const names = changed.map(({ cylinder }) => cylinder).join(', ');
  return `The rest gave way; the pipes of cylinders ${names} lie anew. Undo takes it back.`;
}
