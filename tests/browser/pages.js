// Every page of the console, by a name and its address.

export const PAGES = {
  "day sheet, 17:00": "/day/2026-11-09?view=evening",
  "day sheet, 06:00": "/day/2026-11-09?view=morning",
  "a day with two answers": "/day/2026-10-20",
  units: "/units",
  "units as a table": "/units?table=true",
  "one unit": "/units/TH-01",
  "a unit with a struck figure": "/units/TH-03",
  "a locked unit": "/units/TH-02",
  certificates: "/certificates",
  due: "/due",
  "record a service": "/due/service?unit=TH-08",
  people: "/people",
  "set aside": "/set-aside",
  "in and out": "/in-and-out",
  gaps: "/in-and-out/gaps",
  paper: "/paper",
  "type a page": "/paper/TH-04",
  "blank page": "/paper/TH-04/blank",
  "cab report": "/units/TH-03/cab-report",
  "not there": "/units/none",
};
