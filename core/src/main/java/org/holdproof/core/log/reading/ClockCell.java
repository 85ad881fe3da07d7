package org.holdproof.core.log.reading;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Takes a date, a time of day or both apart, in any of the usual notations, without deciding what an all-figures date
 * means. Used again for each cell.
 */
final class ClockCell {
    /** How a date is written. */
    enum DateForm {
        NONE,
        /** Figures, the year of four digits first: {@code 2031-05-06}, {@code 20310506}. */
        YEAR_FIRST,
        /** Figures, the year of four digits last: {@code 06/05/2031}. */
        YEAR_LAST,
        /** Figures, the year of two digits somewhere: {@code 06.05.31}. */
        SHORT_YEAR,
        /** A month's name and a year of four digits: {@code 6 May 2031}. */
        NAMED_MONTH,
        /** A month's name and a year of two digits: {@code 6-May-31}. */
        NAMED_MONTH_SHORT_YEAR
    }

    private static final Pattern ELAPSED_WORDS = Pattern.compile(
            "(?:(\\d{1,4})\\s*d(?:ays?)?,?\\s*)?"
                    + "(?:(?:(\\d{1,5})\\s*h(?:ours?|rs?)?\\s*)?(?:(\\d{1,3})\\s*m(?:in(?:utes?)?)?\\s*)?(?:(\\d{1,3})\\s*s(?:ec(?:onds?)?)?)?"
                    + "|(\\d{1,2}):(\\d{2}):(\\d{2}))",
            Pattern.CASE_INSENSITIVE);
    private static final int NO_YEAR_DIGITS = 2;
    private static final int DAY_MILLIS = 86_400_000;
    private static final int LARGEST_OFFSET_MINUTES = 18 * 60;
    private static final List<String> MONTHS =
            List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
    /** Month names in German, French, Spanish, Italian, Dutch, Portuguese, Polish, Swedish, Danish and Norwegian. */
    private static final Map<String, Integer> MONTHS_ELSEWHERE = monthsElsewhere();

    private static final List<String> MONTHS_IN_FULL = List.of(
            "january",
            "february",
            "march",
            "april",
            "may",
            "june",
            "july",
            "august",
            "september",
            "october",
            "november",
            "december");
    private static final List<String> WEEKDAYS = List.of(
            "mon",
            "tue",
            "tues",
            "wed",
            "thu",
            "thur",
            "thurs",
            "fri",
            "sat",
            "sun",
            "monday",
            "tuesday",
            "wednesday",
            "thursday",
            "friday",
            "saturday",
            "sunday");

    private final int[] date = new int[3];
    private final int[] digits = new int[3];
    private int dateParts;
    private int namedAt;
    private char dateMark;
    private DateForm form = DateForm.NONE;
    private int timeParts;
    private final int[] time = new int[4];
    private int nanos;
    private boolean hasTime;
    private int millisOfDay;
    private int timeFrom;
    private int timeEnd;
    private boolean twelveHour;
    private boolean hasOffset;
    private int offsetMinutes;

    private char[] text = new char[0];
    private int end;
    private int at;

    /** How the date last read is written, or {@link DateForm#NONE}. */
    DateForm form() {
        return form;
    }

    /** One of the three parts of the date last read, in the order they stand; a named month as its number. */
    int datePart(int place) {
        return date[place];
    }

    /** Where a month's name stood among the parts of the date, or -1. */
    int namedAt() {
        return namedAt;
    }

    boolean hasTime() {
        return hasTime;
    }

    /** The time of day last read, 0 to 86,400,000 (which is 24:00). */
    int millisOfDay() {
        return millisOfDay;
    }

    /** Where the digits of the time of day with colons start in the characters last read, or -1. */
    int timeFrom() {
        return timeFrom;
    }

    /** Where they end. */
    int timeEnd() {
        return timeEnd;
    }

    boolean twelveHour() {
        return twelveHour;
    }

    boolean hasOffset() {
        return hasOffset;
    }

    int offsetMinutes() {
        return offsetMinutes;
    }

    /** Reads a cell without blanks at its ends; false if it is neither a date nor a time of day. */
    boolean read(char[] cell, int from, int cellEnd) {
        text = cell;
        at = from;
        end = cellEnd;
        dateParts = 0;
        namedAt = -1;
        dateMark = 0;
        form = DateForm.NONE;
        timeParts = 0;
        nanos = 0;
        hasTime = false;
        timeFrom = -1;
        twelveHour = false;
        hasOffset = false;
        offsetMinutes = 0;
        int half = -1;
        while (at < end) {
            char c = text[at];
            if (Figure.isDigit(c)) {
                if (!readDigits()) {
                    return false;
                }
            } else if (Character.isLetter(c)) {
                String word = readWord();
                if (word.equals("t") && dateParts == 3 && !hasTime && at < end && Figure.isDigit(text[at])) {
                    continue;
                }
                int month = month(word);
                if (month > 0 && dateParts < 3 && namedAt < 0) {
                    namedAt = dateParts;
                    addDatePart(month, NO_YEAR_DIGITS);
                    skip('.');
                } else if (isHalf(word) >= 0 && hasTime && half < 0) {
                    half = isHalf(word);
                } else if ((word.equals("z") || word.equals("utc") || word.equals("gmt")) && hasTime && !hasOffset) {
                    hasOffset = true;
                    if (at < end && word.length() > 1 && isSign(text[at]) && !readOffset()) {
                        return false;
                    }
                } else if (WEEKDAYS.contains(word) && dateParts == 0) {
                    skip('.');
                } else if (!word.equals("de") || dateParts == 0 || dateParts == 3) {
                    return false;
                }
            } else if ((c == '-' || c == '_')
                    && dateParts == 3
                    && !hasTime
                    && at + 1 < end
                    && Figure.isDigit(text[at + 1])) {
                at++;
            } else if (c == '(' && hasOffset && text[end - 1] == ')') {
                // the name of the zone behind its offset
                at = end;
            } else if (isSign(c) && hasTime && !hasOffset && dateParts != 1 && dateParts != 2) {
                if (!readOffset()) {
                    return false;
                }
            } else if (c == '-' || c == '/' || c == '.') {
                if (dateParts == 0 || dateParts > 2 || !addDateMark(c)) {
                    return false;
                }
                at++;
            } else if (TemperatureCell.isBlank(c) || c == ',') {
                at++;
            } else {
                return false;
            }
        }
        return finish(half);
    }

    /** Reads elapsed time of two, three or four parts divided by colons: {@code h:mm:ss}, {@code d:hh:mm:ss}. */
    boolean readElapsed(char[] cell, int from, int cellEnd) {
        text = cell;
        at = from;
        end = cellEnd;
        timeParts = 0;
        nanos = 0;
        if (readColons(6, 2) && at == end) {
            return true;
        }
        Matcher words = ELAPSED_WORDS.matcher(new String(cell, from, cellEnd - from));
        if (!words.matches() || cellEnd - from < 2) {
            return false;
        }
        nanos = 0;
        timeParts = 4;
        for (int i = 0; i < 4; i++) {
            String part = words.group(i + 1);
            time[i] = part == null ? 0 : Integer.parseInt(part);
        }
        if (words.group(5) != null) {
            time[1] = Integer.parseInt(words.group(5));
            time[2] = Integer.parseInt(words.group(6));
            time[3] = Integer.parseInt(words.group(7));
        } else if (words.group(1) == null
                && words.group(2) == null
                && words.group(3) == null
                && words.group(4) == null) {
            return false;
        }
        // hours beyond a day stand alone
        if (words.group(1) == null) {
            timeParts = 3;
            time[0] = time[1];
            time[1] = time[2];
            time[2] = time[3];
        }
        return true;
    }

    /** How many parts the elapsed time or time of day last read has. */
    int timeParts() {
        return timeParts;
    }

    /** One part of the elapsed time last read. */
    int timePart(int place) {
        return time[place];
    }

    /** The fraction of the elapsed time's last part, a second, in nanoseconds. */
    int nanos() {
        return nanos;
    }

    private boolean readDigits() {
        int from = at;
        while (at < end && Figure.isDigit(text[at])) {
            at++;
        }
        int count = at - from;
        if (at < end && text[at] == ':' && count == 10 && dateParts == 0) {
            // the date glued to the hour
            addDatePart(number(from, from + 4), 4);
            addDatePart(number(from + 4, from + 6), 2);
            addDatePart(number(from + 6, from + 8), 2);
            at = from + 8;
            return readDigits();
        }
        if (at < end && text[at] == ':') {
            at = from;
            boolean readable = !hasTime && readColons(2, 3) && takeTimeOfDay();
            timeFrom = from;
            timeEnd = at;
            return readable;
        }
        if (count <= 2 && at < end && (text[at] == 'h' || text[at] == 'H') && !hasTime && isTwoDigits(at + 1)) {
            return readHourMark(from);
        }
        if (dateParts == 3 && !hasTime) {
            at = from;
            return readPlainTime(count);
        }
        if ((count == 14 || count == 12) && dateParts == 0) {
            addDatePart(number(from, from + 4), 4);
            addDatePart(number(from + 4, from + 6), 2);
            addDatePart(number(from + 6, from + 8), 2);
            at = from + 8;
            return readPlainTime(count - 8);
        }
        if (count == 8 && dateParts == 0) {
            addDatePart(number(from, from + 4), 4);
            addDatePart(number(from + 4, from + 6), 2);
            addDatePart(number(from + 6, from + 8), 2);
            return true;
        }
        if (dateParts == 3 || count > 4 || count == 3) {
            return false;
        }
        addDatePart(number(from, at), count);
        return true;
    }

    /** A time such as {@code 18h30} or {@code 18h30m15}. */
    private boolean readHourMark(int from) {
        time[0] = number(from, at);
        time[1] = number(at + 1, at + 3);
        time[2] = 0;
        timeParts = 2;
        at += 3;
        if (at + 2 < end && (text[at] == 'm' || text[at] == 'M' || text[at] == ':') && isTwoDigits(at + 1)) {
            time[2] = number(at + 1, at + 3);
            timeParts = 3;
            at += 3;
            skip('s');
        }
        return takeTimeOfDay();
    }

    /** A time behind a date without colons: {@code 101530}, {@code 1015}, {@code 10.15}, {@code 10.15.30}. */
    private boolean readPlainTime(int count) {
        int from = at;
        at += count;
        if (count == 6 || count == 4) {
            time[0] = number(from, from + 2);
            time[1] = number(from + 2, from + 4);
            time[2] = count == 6 ? number(from + 4, from + 6) : 0;
            timeParts = count / 2;
            return (timeParts < 3 || readFraction()) && takeTimeOfDay();
        }
        if (count > 2 || at >= end) {
            return false;
        }
        if (text[at] != '.') {
            time[0] = number(from, at);
            time[1] = 0;
            time[2] = 0;
            timeParts = 1;
            return takeTimeOfDay();
        }
        time[0] = number(from, at);
        time[2] = 0;
        timeParts = 1;
        while (timeParts < 3 && at < end && text[at] == '.') {
            if (!isTwoDigits(at + 1)) {
                return false;
            }
            time[timeParts++] = number(at + 1, at + 3);
            at += 3;
        }
        return takeTimeOfDay();
    }

    private boolean isTwoDigits(int from) {
        return from + 1 < end
                && Figure.isDigit(text[from])
                && Figure.isDigit(text[from + 1])
                && (from + 2 == end || !Figure.isDigit(text[from + 2]));
    }

    private boolean readColons(int longestFirst, int fewestPartsForFraction) {
        int from = at;
        while (at < end && Figure.isDigit(text[at])) {
            at++;
        }
        if (at == from || at - from > longestFirst) {
            return false;
        }
        time[0] = number(from, at);
        timeParts = 1;
        while (timeParts < 4 && at < end && text[at] == ':') {
            int part = at + 1;
            int behind = part;
            while (behind < end && Figure.isDigit(text[behind])) {
                behind++;
            }
            if (behind == part || behind - part > 2) {
                return false;
            }
            time[timeParts++] = number(part, behind);
            at = behind;
        }
        return timeParts > 1 && (timeParts < fewestPartsForFraction || readFraction());
    }

    private boolean readFraction() {
        nanos = 0;
        boolean fraction = at + 1 < end && (text[at] == '.' || text[at] == ',') && Figure.isDigit(text[at + 1]);
        if (!fraction) {
            return true;
        }
        at++;
        int scale = 100_000_000;
        while (at < end && Figure.isDigit(text[at])) {
            nanos += (text[at++] - '0') * scale;
            scale /= 10;
        }
        return true;
    }

    private boolean takeTimeOfDay() {
        if (timeParts > 3) {
            return false;
        }
        if (timeParts < 3) {
            time[2] = 0;
        }
        hasTime = true;
        return time[0] <= 24 && time[1] < 60 && time[2] < 60;
    }

    private boolean readOffset() {
        boolean negative = text[at] != '+';
        int from = ++at;
        while (at < end && Figure.isDigit(text[at])) {
            at++;
        }
        int count = at - from;
        int hours;
        int minutes = 0;
        if (count == 4) {
            hours = number(from, from + 2);
            minutes = number(from + 2, at);
        } else if (count == 1 || count == 2) {
            hours = number(from, at);
            if (at < end && text[at] == ':') {
                if (!isTwoDigits(at + 1)) {
                    return false;
                }
                minutes = number(at + 1, at + 3);
                at += 3;
            }
        } else {
            return false;
        }
        hasOffset = true;
        offsetMinutes = (hours * 60 + minutes) * (negative ? -1 : 1);
        return minutes < 60 && Math.abs(offsetMinutes) <= LARGEST_OFFSET_MINUTES;
    }

    private boolean finish(int half) {
        if (hasTime && half >= 0) {
            if (time[0] < 1 || time[0] > 12) {
                return false;
            }
            time[0] = time[0] % 12 + 12 * half;
            twelveHour = true;
        }
        if (hasTime && timeParts == 1 && !twelveHour) {
            return false;
        }
        if (hasTime) {
            millisOfDay = ((time[0] * 60 + time[1]) * 60 + time[2]) * 1000 + nanos / 1_000_000;
            if (millisOfDay > DAY_MILLIS) {
                return false;
            }
        }
        if (dateParts == 0) {
            return hasTime;
        }
        return dateParts == 3 && settleForm();
    }

    private boolean settleForm() {
        int year = -1;
        for (int i = 0; i < 3; i++) {
            if (digits[i] == 4) {
                if (year >= 0) {
                    return false;
                }
                year = i;
            }
        }
        if (year == 1) {
            return false;
        }
        if (namedAt < 0) {
            form = year == 0 ? DateForm.YEAR_FIRST : year == 2 ? DateForm.YEAR_LAST : DateForm.SHORT_YEAR;
            return true;
        }
        if (namedAt == 2 || (year == 0 && namedAt != 1)) {
            return false;
        }
        form = year >= 0 ? DateForm.NAMED_MONTH : DateForm.NAMED_MONTH_SHORT_YEAR;
        return true;
    }

    private boolean addDateMark(char mark) {
        boolean same = dateMark == 0 || dateMark == mark || namedAt >= 0;
        dateMark = mark;
        return same && at + 1 < end;
    }

    private void addDatePart(int value, int digitCount) {
        date[dateParts] = value;
        digits[dateParts++] = digitCount;
    }

    private void skip(char c) {
        if (at < end && text[at] == c) {
            at++;
        }
    }

    private String readWord() {
        int from = at;
        while (at < end && Character.isLetter(text[at])) {
            at++;
        }
        // "a.m." and "p.m.": the points belong to the word
        if (at - from == 1 && at + 1 < end && text[at] == '.') {
            int letter = at + 1;
            while (letter < end && TemperatureCell.isBlank(text[letter])) {
                letter++;
            }
            if (letter < end && (text[letter] == 'm' || text[letter] == 'M')) {
                char first = Character.toLowerCase(text[from]);
                at = letter + 1;
                skip('.');
                return first + "m";
            }
        }
        return new String(text, from, at - from).toLowerCase(Locale.ROOT);
    }

    private static int isHalf(String word) {
        return switch (word) {
            case "am", "a" -> 0;
            case "pm", "p" -> 1;
            default -> -1;
        };
    }

    private static int month(String word) {
        int place = word.length() == 3 ? MONTHS.indexOf(word) : MONTHS_IN_FULL.indexOf(word);
        if (place >= 0) {
            return place + 1;
        }
        if (word.equals("sept")) {
            return 9;
        }
        return MONTHS_ELSEWHERE.getOrDefault(word, 0);
    }

    private static Map<String, Integer> monthsElsewhere() {
        String[] names = {
            "januar jänner januari janvier janv enero ene gennaio gen janeiro styczeń stycznia sty",
            "februar februari février févr fév febrero febbraio fevereiro fev luty lutego lut",
            "märz mrz mär mars maart mrt marzo março marca marzec",
            "april avril avr abril abr aprile kwiecień kwietnia kwi",
            "mai mei mayo maggio mag maio maj maja",
            "juni juin junio giugno giu junho czerwiec czerwca cze",
            "juli juillet juil julio luglio lug julho lipiec lipca lip",
            "august augustus augusti août aoû agosto ago sierpień sierpnia sie",
            "september septembre septiembre settembre setembro set sett wrzesień września wrz",
            "oktober okt octobre octubre ottobre ott outubro out październik października paź",
            "november novembre noviembre novembro listopad listopada lis",
            "dezember dez december décembre déc diciembre dic dicembre dezembro grudzień grudnia gru"
        };
        Map<String, Integer> numbers = new HashMap<>();
        for (int month = 0; month < names.length; month++) {
            for (String name : names[month].split(" ", -1)) {
                numbers.put(name, month + 1);
            }
        }
        return Map.copyOf(numbers);
    }

    private static boolean isSign(char c) {
        return c == '+' || Figure.isMinus(c);
    }

    private int number(int from, int behind) {
        int value = 0;
        for (int i = from; i < behind; i++) {
            value = value * 10 + (text[i] - '0');
        }
        return value;
    }
}
