/** What is opened when somebody wants to say it: its title, and how far it is known. */
export const chapters = {
  known: (known: number, of: number): string => (known === of ? 'all is known' : `${known} of ${of} known`),
  listed: (count: number): string => (count === 0 ? 'nothing is listed yet' : count === 1 ? '1 is listed' : `${count} are listed`),
  control: 'What the control does',
  dangers: 'Where else it can hurt',
  passingBy: 'Who passes by',
}
