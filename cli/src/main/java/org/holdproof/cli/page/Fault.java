package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Something the page cannot do as asked, in words for the person before it. */
final class Fault extends Exception {
    private static final int BAD_REQUEST = 400;
    private static final int UNREADABLE = 422;
    private static final int TOO_LARGE = 413;
    private static final int NOT_FOUND = 404;
    private static final int CONFLICT = 409;
    private static final int NO_ROOM = 507;

    private final int status;
    private final transient ObjectNode parts;

    private Fault(int status, String kind, String message) {
        super(message);
        this.status = status;
        parts = JsonNodeFactory.instance.objectNode().put("kind", kind).put("message", message);
    }

    /** A request that the page itself would not make. */
    static Fault badRequest(String message) {
        return new Fault(BAD_REQUEST, "request", message);
    }

    /** Something handed in that cannot be read; what is known of it is added with {@link #with}. */
    static Fault unreadable(String message) {
        return new Fault(UNREADABLE, "unreadable", message);
    }

    static Fault tooLarge(String message) {
        return new Fault(TOO_LARGE, "too large", message);
    }

    static Fault missing(String message) {
        return new Fault(NOT_FOUND, "missing", message);
    }

    static Fault conflict(String message) {
        return new Fault(CONFLICT, "conflict", message);
    }

    static Fault passphrase(String message) {
        return new Fault(UNREADABLE, "passphrase", message);
    }

    static Fault diskFull() {
        return new Fault(NO_ROOM, "disk", "Could not be kept: the disk is full. Nothing here is lost.");
    }

    static Fault disk(String message) {
        return new Fault(NO_ROOM, "disk", message);
    }

    Fault with(String name, String value) {
        parts.put(name, value);
        return this;
    }

    Fault with(String name, long value) {
        parts.put(name, value);
        return this;
    }

    Fault with(String name, ObjectNode value) {
        parts.set(name, value);
        return this;
    }

    Reply reply() {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        body.set("fault", parts);
        return Reply.json(status, body);
    }
}
