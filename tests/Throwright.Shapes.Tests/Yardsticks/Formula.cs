using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Yardsticks;

/// <summary>A formula grown at random, to be evaluated in every kind of number.</summary>
public sealed class Formula
{
    private enum Operation
    {
        Input,
        Constant,
        Plus,
        Minus,
        Times,
        Over,
        Scaled,
        Negative,
        Sqrt,
        Square,
        Sin,
        Cos,
        AtLeastZero,
    }

    private readonly Operation operation;
    private readonly int input;
    private readonly double constant;
    private readonly Formula? left, right;

    private Formula(Operation operation, int input, double constant, Formula? left, Formula? right) =>
        (this.operation, this.input, this.constant, this.left, this.right) = (operation, input, constant, left, right);

    /// <summary>A random formula; <paramref name="smooth"/> leaves out the kink and whatever is not defined everywhere.</summary>
    public static Formula Grow(Random random, int inputs, int depth, bool smooth = false)
    {
        if (depth == 0 || random.Next(8) == 0)
        {
            return random.Next(5) == 0
                ? new(Operation.Constant, 0, Math.Round((random.NextDouble() * 4) - 2, random.Next(0, 4)), null, null)
                : new(Operation.Input, random.Next(inputs), 0, null, null);
        }

        var operation = (Operation)random.Next((int)Operation.Plus, (int)Operation.AtLeastZero + 1);
        if (smooth && operation is Operation.Over or Operation.Sqrt or Operation.AtLeastZero)
            operation = Operation.Times;
        var left = Grow(random, inputs, depth - 1, smooth);
        var right = operation is Operation.Plus or Operation.Minus or Operation.Times or Operation.Over ? Grow(random, inputs, depth - 1, smooth) : null;
        return new(operation, 0, Math.Round((random.NextDouble() * 6) - 3, 2), left, right);
    }

    public T At<T>(T[] inputs)
        where T : struct, IReal<T> => operation switch
        {
            Operation.Input => inputs[input],
            Operation.Constant => T.Of(constant),
            Operation.Plus => left!.At(inputs) + right!.At(inputs),
            Operation.Minus => left!.At(inputs) - right!.At(inputs),
            Operation.Times => left!.At(inputs) * right!.At(inputs),
            Operation.Over => left!.At(inputs) / right!.At(inputs),
            Operation.Scaled => constant * left!.At(inputs),
            Operation.Negative => -left!.At(inputs),
            Operation.Sqrt => T.Sqrt(left!.At(inputs)),
            Operation.Square => T.Square(left!.At(inputs)),
            Operation.Sin => T.Sin(left!.At(inputs)),
            Operation.Cos => T.Cos(left!.At(inputs)),
            _ => T.AtLeastZero(left!.At(inputs)),
        };

    public double Plain(double[] inputs) => At<Real>([.. inputs.Select(Real.Of)]).Value;

    public Wide Exact(double[] inputs) => At<Wide>([.. inputs.Select(Wide.Of)]);

    public override string ToString() => operation switch
    {
        Operation.Input => $"x{input}",
        Operation.Constant => $"{constant:R}",
        Operation.Plus => $"({left} + {right})",
        Operation.Minus => $"({left} - {right})",
        Operation.Times => $"({left} * {right})",
        Operation.Over => $"({left} / {right})",
        Operation.Scaled => $"({constant:R} {left})",
        Operation.Negative => $"-{left}",
        _ => $"{operation}({left})",
    };
}
