// Prints the events of iCalendar files as ical.js reads them, one JSON list per file.   node parse.mjs FILE...
import { readFileSync } from "node:fs";
import ICAL from "ical.js";

ICAL.design.icalendar.property.name = { defaultType: "text" }; // RFC 7986, 5.1, is younger than the library's list
const MOST = 5000; // occurrences of one event

function alarms(component) {
  return component.getAllSubcomponents("valarm").map((alarm) => ({
    action: alarm.getFirstPropertyValue("action"),
    trigger: alarm.getFirstPropertyValue("trigger").toString(),
  }));
}

function occurrences(event) {
  const all = [], steps = event.iterator();
  for (let at = steps.next(); at && all.length < MOST; at = steps.next()) all.push(at.toString());
  return all;
}

function read(component) {
  const event = new ICAL.Event(component), start = event.startDate;
  return {
    uid: event.uid,
    start: start.toString(),
    all_day: start.isDate,
    floating: start.zone === ICAL.Timezone.localTimezone,
    stamp: component.getFirstPropertyValue("dtstamp").toString(),
    sequence: event.sequence,
    summary: event.summary,
    description: event.description,
    what: component.getAllProperties("categories").flatMap((one) => one.getValues()),
    status: component.getFirstPropertyValue("status"),
    occurrences: occurrences(event),
    alarms: alarms(component),
  };
}

const files = process.argv.slice(2).map((file) => {
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(file, "utf8")));
  return { name: calendar.getFirstPropertyValue("name"), events: calendar.getAllSubcomponents("vevent").map(read) };
});
console.log(JSON.stringify(files));
