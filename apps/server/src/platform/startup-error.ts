/**
 * The server cannot start (or go on) for a reason that the person at the terminal can mend: the message
 * says what, the value and the remedy, and is printed without a stack.
 */
export class StartupError extends Error {
  override readonly name = 'StartupError';
}
