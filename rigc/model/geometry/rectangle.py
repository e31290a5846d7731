"""Rectangle: a footprint, strip, tape or area seen from above, and what turning and overlapping do to it."""

from __future__ import annotations

from rigc.model.geometry.polygon import Polygon
from rigc.record import Record


class Rectangle(Record):
    """A rectangle in mm: its front-left corner, its width (in x) and depth (in y)."""

    x_mm: float
    y_mm: float
    width_mm: float
    depth_mm: float

    @property
    def right_mm(self) -> float:
        """Its right edge."""
        return self.x_mm + self.width_mm

    @property
    def rear_mm(self) -> float:
        """Its rear edge."""
        return self.y_mm + self.depth_mm

    @property
    def corners(self) -> Polygon:
        """Its corners, counter-clockwise from the front-left one."""
        return (
            (self.x_mm, self.y_mm),
            (self.right_mm, self.y_mm),
            (self.right_mm, self.rear_mm),
            (self.x_mm, self.rear_mm),
        )

    def overlap(self, other: Rectangle) -> tuple[float, float]:
        """How far both reach into each other in x and in y; what is not positive is the gap between them."""
        return (
            min(self.right_mm, other.right_mm) - max(self.x_mm, other.x_mm),
            min(self.rear_mm, other.rear_mm) - max(self.y_mm, other.y_mm),
        )

    def shared_mm2(self, other: Rectangle) -> float:
        """The area that both cover."""
        across, along = self.overlap(other)
        return max(across, 0.0) * max(along, 0.0)

    def turned_within(self, width_mm: float, depth_mm: float, degrees: int) -> Rectangle:
        """Where this part of a thing (that wide and deep) lies when the thing is turned counter-clockwise by quarters.

        The corner counts from the front-left corner of the thing's outline, before and after turning.
        """
        left, front = self.x_mm, self.y_mm
        right, rear = width_mm - self.right_mm, depth_mm - self.rear_mm
        if degrees == 90:
            return Rectangle(rear, left, self.depth_mm, self.width_mm)
        if degrees == 180:
            return Rectangle(right, rear, self.width_mm, self.depth_mm)
        if degrees == 270:
            return Rectangle(front, right, self.depth_mm, self.width_mm)
        return self

    def moved(self, x_mm: float, y_mm: float) -> Rectangle:
        """The same rectangle, that much further right and back."""
        return Rectangle(self.x_mm + x_mm, self.y_mm + y_mm, self.width_mm, self.depth_mm)
