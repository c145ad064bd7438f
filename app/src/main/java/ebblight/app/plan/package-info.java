/**
 * Planning a day: time zones, tide stations, typed tables, wishes about the hour, and the sheet to take along.
 *
 * <p>Belongs here: what command line and pages both need to ask for an hour and to show it. Does not belong here: how
 * hours are found ({@code core.outing}) and how a person is spoken to.
 */
@NullMarked
package ebblight.app.plan;

import org.jspecify.annotations.NullMarked;
