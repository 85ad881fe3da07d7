package org.holdproof.core.input;

import org.holdproof.core.wording.Printable;

/**
 * A file that cannot be used, or leaves open what must not be guessed. The message is for the person at the desk; its
 * parts are there for a page that lays them out. No part holds a control character, whatever the file holds.
 */
public final class UnreadableInputException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Place place;
    private final String found;
    private final String expected;
    private final String remedy;

    /**
     * @param place where it stands
     * @param found what stands there
     * @param expected what was expected
     * @param remedy what to do about it, one or more sentences
     */
    public UnreadableInputException(Place place, String found, String expected, String remedy) {
        super(Printable.line(place.words() + ": found " + found + "; expected " + expected + ". " + remedy));
        this.place = place;
        this.found = Printable.line(found);
        this.expected = Printable.line(expected);
        this.remedy = Printable.line(remedy);
    }

    public Place place() {
        return place;
    }

    public String found() {
        return found;
    }

    public String expected() {
        return expected;
    }

    public String remedy() {
        return remedy;
    }
}
