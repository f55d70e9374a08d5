/** When the page itself breaks: say so, and say that nothing kept is lost. */
import { Component, type ReactNode } from 'react';

interface Props {
  readonly children: ReactNode;
}

export class Mishap extends Component<Props, { readonly reason?: Error }> {
  override state: { readonly reason?: Error } = {};

  static getDerivedStateFromError(reason: Error): { readonly reason: Error } {
    return { reason };
  }

  override render(): ReactNode {
    const { reason } = this.state;
    if (reason === undefined) return this.props.children;
    return (
      <main className="mishap">
        <h1>This page broke</h1>
        <p>The car files are untouched, and what you typed is still held in this browser.</p>
        <p>
          <a href="./">Back to the floor</a>, or load the page again. If it breaks again, report this line:
        </p>
        <p className="mono">{reason.message}</p>
      </main>
    );
  }
}
