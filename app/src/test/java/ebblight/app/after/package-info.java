@NullMarked
package ebblight.app.after;

import org.jspecify.annotations.NullMarked;
