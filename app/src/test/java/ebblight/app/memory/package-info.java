@NullMarked
package ebblight.app.memory;

import org.jspecify.annotations.NullMarked;
