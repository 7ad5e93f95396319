/** A seedling with nodules on its roots. */
export function OwnMark() {
  return (
    <svg
      viewBox="0 0 24 24"
      width="20"
      height="20"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
      strokeLinecap="round"
      aria-hidden="true"
    >
      <path d="M12 3v18M12 8c-4 0-6-2-6.500-5 4 0 6.500 2 6.500 5ZM12 9c0-3 2.500-5 6.500-5-.5 3-2.500 5-6.500 5ZM12 14l-5 4M12 16l5 3.500" />
      <g fill="currentColor" stroke="none">
        <circle cx="7" cy="18" r="2.2" />
        <circle cx="17" cy="19.5" r="2.2" />
        <circle cx="12" cy="21" r="1.8" />
      </g>
    </svg>
  );
}
