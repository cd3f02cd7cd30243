using Throwright.Shapes;

namespace Throwright.Formats.Drawing;

/// <summary>A finished drawing of known size in mm, in the order in which things are laid over each other.</summary>
/// <param name="Title">What it shows, as one would name it aloud.</param>
/// <param name="Description">The same in a sentence or two, for who can't see it.</param>
public sealed record Picture(double Width, double Height, string Title, string Description, EquatableList<Shape> Shapes)
{
    public Box Paper => new(0, 0, Width, Height);

    public IEnumerable<Lettering> Letterings => Shapes.OfType<Lettering>();
}
