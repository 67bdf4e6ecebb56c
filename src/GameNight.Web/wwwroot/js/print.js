// Opens the browser's own print dialog once the typefaces are there. The call returns at once: the dialog stops the page for
// as long as it is open, and the server must not wait for it.
export function printPage() {
  document.fonts.ready.then(() => setTimeout(() => window.print(), 0));
}
