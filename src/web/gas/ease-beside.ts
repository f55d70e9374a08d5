/** What would do is looked for beside the page, piece by piece, and told as it is found. */
import type { EasingPrimaries } from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import type { EasedTold } from './protocol.ts';

/** Work between two looks at what the page says, ms. */
const PIECE = 60;

export class EaseBeside {
  private readonly post: (told: EasedTold) => void;
  private asked:
    | { readonly easing: EasingPrimaries; readonly speech: Speech; readonly of: string | undefined }
    | undefined;

  constructor(post: (told: EasedTold) => void) {
    this.post = post;
  }

  /** @param of  which part, of several */
  begin(easing: EasingPrimaries, speech: Speech, of?: string): void {
    this.asked = { easing, speech, of };
    this.go();
  }

  /** @returns whether something was looked for, and what was found of it is told */
  hold(): boolean {
    if (this.asked === undefined) return false;
    this.tell(false);
    return true;
  }

  /** Something else is asked. */
  forget(): void {
    this.asked = undefined;
  }

  private go(): void {
    const { asked } = this;
    if (asked === undefined) return;
    const until = performance.now() + PIECE;
    let goesOn = true;
    while (goesOn && performance.now() < until) goesOn = asked.easing.advance();
    this.tell(goesOn);
    if (goesOn) setTimeout(() => this.go());
  }

  private tell(goesOn: boolean): void {
    const { easing, speech, of } = this.asked!;
    const now = easing.now(speech);
    this.post({
      kind: 'eased',
      ...(of === undefined ? {} : { of }),
      eased: easing.found(speech).map(({ solution: _, ...each }) => each),
      ...(now === undefined || !goesOn ? {} : { now }),
    });
    if (!goesOn) this.asked = undefined;
  }
}
