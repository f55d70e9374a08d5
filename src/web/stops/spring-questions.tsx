export function SpringQuestions() {
  return null;
}
