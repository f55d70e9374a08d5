/** Today by the clock of this machine, as ISO 8601 writes it. */
export function today(now = new Date()): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
