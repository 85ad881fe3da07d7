// Which profile a place proposes. The person confirms it; a place that is not here proposes none.
export const PLACES = [
  ["US: restaurant, catering, retail", "us-food-code-2022", "America/New_York America/Chicago America/Denver America/Los_Angeles America/Phoenix America/Anchorage Pacific/Honolulu"],
  ["US: plant under federal inspection", "us-fsis-2021", "America/New_York America/Chicago America/Denver America/Los_Angeles America/Phoenix America/Anchorage Pacific/Honolulu"],
  ["US: New York State or City", "us-new-york", "America/New_York"],
  ["Canada: federal", "canada-cfia", "America/Toronto America/Winnipeg America/Edmonton America/Halifax America/St_Johns"],
  ["Canada: British Columbia", "canada-bc", "America/Vancouver"],
  ["England, Wales, Northern Ireland", "uk-england-wales-ni", "Europe/London"],
  ["Scotland", "uk-scotland", "Europe/London"],
  ["Ireland", "ireland-fsai", "Europe/Dublin"],
  ["Australia", "australia", "Australia/Sydney Australia/Melbourne Australia/Brisbane Australia/Adelaide Australia/Perth Australia/Hobart Australia/Darwin"],
  ["New Zealand", "new-zealand", "Pacific/Auckland"],
  ["Hong Kong", "hong-kong-cfs", "Asia/Hong_Kong"],
];
