import { Component } from 'react';
import type { ReactNode } from 'react';
import styles from './app.module.css';

interface BoundaryProps {
  /** What this part of the window is, in words. */
  readonly part: string;
  readonly children: ReactNode;
  caught(error: unknown): void;
}

/** Keeps a fault of ours within its part of the window; the plan and the rest go on. */
export class ErrorBoundary extends Component<BoundaryProps, { readonly error: Error | null }> {
  override readonly state: { readonly error: Error | null } = { error: null };

  static getDerivedStateFromError(error: unknown) {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override componentDidCatch(error: unknown): void {
    this.props.caught(error);
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <div className={styles.broken} role="alert">
        <p>
          <b>{this.props.part} stopped working.</b> Your plan is kept on this device. Save it to a file, then
          reload the page.
        </p>
        <p>{error.message}</p>
        <button type="button" onClick={() => this.setState({ error: null })}>
          Try again
        </button>
      </div>
    );
  }
}
