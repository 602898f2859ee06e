
// Put behind the page's glue for the tests in a browser, under names that their own glue has not.
export const builtStart = (bytes) => initSync({ module: bytes });
export { turn as builtTurn, clear as builtClear };
