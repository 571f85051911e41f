/** The mark: an eaves line, a camera under it, and what it looks at. */
export function Mark({ size }: { size: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 20 20" fill="none" stroke="currentColor" aria-hidden>
      <path d="M1.5 7.6 10 2.4l8.5 5.2" strokeWidth="1.8" strokeLinecap="round" strokeLinejoin="round" />
      <path d="M4.4 7.4V17" strokeWidth="1.6" strokeLinecap="round" />
      <path d="M4.4 8h10.2l-1.1 3.4H8.2l-1 1.5H4.4z" fill="currentColor" stroke="none" />
      <path d="m10 13 6.6 4.2" strokeWidth="1.6" strokeLinecap="round" strokeDasharray="1.6 2.6" />
    </svg>
  );
}
