// Shows the notice while the connection to the server is lost, and reloads when the page cannot be resumed.
const modal = document.getElementById("components-reconnect-modal");
modal.addEventListener("components-reconnect-state-changed", event => {
  const state = event.detail.state;
  // On the night itself the clocks stay in sight.
  if (state === "show") { if (document.querySelector("[data-live]")) { modal.show(); } else { modal.showModal(); } }
  else if (state === "hide") { modal.close(); }
  else if (state === "failed") { document.addEventListener("visibilitychange", retry); setTimeout(retry, 3000); }
  else if (state === "rejected" || state === "resume-failed") { location.reload(); }
});
document.getElementById("reconnect-now").addEventListener("click", retry);

async function retry() {
  if (document.visibilityState !== "visible") { return; }
  document.removeEventListener("visibilitychange", retry);
  try {
    if (!await Blazor.reconnect() && !await Blazor.resumeCircuit()) { location.reload(); }
    else { modal.close(); }
  } catch { setTimeout(retry, 3000); }
}
