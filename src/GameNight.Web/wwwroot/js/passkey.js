// Shows the forms for passkeys where the browser knows them, asks for the key, and sends its answer with the form.
const known = window.PublicKeyCredential?.parseCreationOptionsFromJSON && window.PublicKeyCredential.parseRequestOptionsFromJSON;
for (const form of known ? document.querySelectorAll("form[data-passkey]") : []) {
  const note = form.querySelector("[data-passkey-note]");
  let busy = false;
  form.hidden = false;
  form.addEventListener("submit", async event => {
    event.preventDefault();
    if (busy) { return; }
    busy = true;
    note.hidden = true;
    try {
      const answer = await fetch(form.dataset.options, { method: "POST", body: new URLSearchParams(new FormData(form)) });
      if (answer.redirected) { location.assign(answer.url); return; }
      if (!answer.ok) { throw new Error(answer.status === 429 ? note.dataset.tooOften : note.dataset.tooOld); }
      const options = await answer.json();
      const credential = form.dataset.passkey === "create"
        ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
        : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
      form.elements.credential.value = JSON.stringify(credential);
      form.submit();
    } catch (fault) {
      note.textContent = fault.name === "NotAllowedError" ? note.dataset.notUsed
        : fault.name === "InvalidStateError" ? note.dataset.known
        : fault instanceof TypeError ? note.dataset.broke
        : fault.message;
      note.hidden = false;
      busy = false;
    }
  });
}
