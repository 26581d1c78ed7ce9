import { Component, type ReactNode } from 'react';
import { planSave } from './files/files.ts';
import { Notice } from './panels/Notice.tsx';
import { planUndo } from './state/planStore.ts';

interface RescueState {
  readonly why: string | null;
}

/** Where the screen itself fails, the plan is still there: it can be saved, and the last change undone. */
export class Rescue extends Component<{ readonly children: ReactNode }, RescueState> {
  override state: RescueState = { why: null };

  static getDerivedStateFromError(error: unknown): RescueState {
    return { why: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { why } = this.state;
    if (why === null) return this.props.children;
    return (
      <main className="rescue">
        <h1>The screen could not be drawn</h1>
        <p>The plan is here as long as this page stays open. {why}</p>
        <div className="choices">
          <button type="button" className="button main" onClick={() => void planSave()}>
            Save the plan
          </button>
          <button
            type="button"
            className="button framed"
            onClick={() => {
              planUndo();
              this.setState({ why: null });
            }}
          >
            Undo the last change and draw again
          </button>
        </div>
        <Notice />
      </main>
    );
  }
}
