// Reads calendar files from standard input, writes what two libraries make of them to standard output, both as JSON.
// [{name, text}] -> [{name, library, method, events: [{uid, start, end, status, sequence, location}]}], moments in milliseconds.
import { text } from 'node:stream/consumers';
import ICAL from 'ical.js';
import ical from 'node-ical';

const read = [];
for (const file of JSON.parse(await text(process.stdin))) {
  // This one reckons with the time zones that the file brings along.
  ICAL.TimezoneService.reset();
  const calendar = new ICAL.Component(ICAL.parse(file.text));
  for (const zone of calendar.getAllSubcomponents('vtimezone')) {
    ICAL.TimezoneService.register(new ICAL.Timezone(zone));
  }
  read.push({
    name: file.name,
    library: 'ical.js',
    method: calendar.getFirstPropertyValue('method'),
    events: calendar.getAllSubcomponents('vevent').map((one) => {
      const event = new ICAL.Event(one);
      return {
        uid: event.uid,
        start: event.startDate.toJSDate().getTime(),
        end: event.endDate.toJSDate().getTime(),
        status: one.getFirstPropertyValue('status'),
        sequence: event.sequence,
        location: event.location ?? null,
      };
    }),
  });

  // This one has time zones of its own.
  const entries = Object.values(ical.sync.parseICS(file.text));
  read.push({
    name: file.name,
    library: 'node-ical',
    method: entries.find((entry) => entry.type === 'VCALENDAR')?.method ?? entries.find((entry) => entry.method)?.method ?? null,
    events: entries.filter((entry) => entry.type === 'VEVENT').map((event) => ({
      uid: event.uid,
      start: event.start.getTime(),
      end: event.end.getTime(),
      status: event.status,
      sequence: Number(event.sequence),
      location: event.location ?? null,
    })),
  });
}
process.stdout.write(JSON.stringify(read));
