package org.holdproof.core.input;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Where something stands in a file: as much of it as is known.
 *
 * @param file the file's name as the user gave it
 * @param line counted from 1
 * @param character the character of the line, counted from 1
 * @param column the column of a table: its heading, or its number counted from 1
 * @param pointer the JSON pointer (RFC 6901) of a value
 */
public record Place(
        String file, OptionalLong line, OptionalInt character, Optional<String> column, Optional<String> pointer) {

    /** The whole file. */
    public static Place file(String file) {
        return new Place(file, OptionalLong.empty(), OptionalInt.empty(), Optional.empty(), Optional.empty());
    }

    /** A line of this file, counted from 1; 0 is the whole file. */
    public Place line(long number) {
        return new Place(file, number > 0 ? OptionalLong.of(number) : OptionalLong.empty(), character, column, pointer);
    }

    /** A character of a line, both counted from 1; 0 is unknown. */
    public Place character(long lineNumber, int number) {
        Place whole = line(lineNumber);
        return new Place(file, whole.line, number > 0 ? OptionalInt.of(number) : OptionalInt.empty(), column, pointer);
    }

    /** A column of the table, by its heading. */
    public Place column(String heading) {
        return new Place(file, line, character, Optional.of(heading), pointer);
    }

    /** A column of the table, counted from 1; 0 is the whole line. */
    public Place column(int number) {
        return number > 0 ? column(Integer.toString(number)) : this;
    }

    /** A member of the JSON object that stands here, there or not. */
    public Place member(String name) {
        return pointer(pointer.orElse("") + "/" + name.replace("~", "~0").replace("/", "~1"));
    }

    /** An item of the JSON list that stands here, counted from 0. */
    public Place item(int index) {
        return pointer(pointer.orElse("") + "/" + index);
    }

    /** A value of a JSON document; an empty pointer is the whole document. */
    public Place pointer(String written) {
        return new Place(file, line, character, column, written.isEmpty() ? Optional.empty() : Optional.of(written));
    }

    /** What is wrong here. */
    public UnreadableInputException fault(String found, String expected, String remedy) {
        return new UnreadableInputException(this, found, expected, remedy);
    }

    /** As a message names it: {@code cook.json, line 3, column 9, at /product}. */
    public String words() {
        StringBuilder words = new StringBuilder(file);
        line.ifPresent(number -> words.append(", line ").append(number));
        character.ifPresent(number -> words.append(", column ").append(number));
        column.ifPresent(name -> words.append(", column ").append(name));
        pointer.ifPresent(written -> words.append(", at ").append(written));
        return words.toString();
    }
}
