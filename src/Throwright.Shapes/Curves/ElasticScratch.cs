using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>Room for one system's matrix, shared by all the systems of a solve: only one is assembled at a time.</summary>
internal sealed class ElasticScratch
{
    public Vector3[] B1 { get; private set; } = [];
    public Vector3[] B2 { get; private set; } = [];
    public Vector3[] Gradient { get; private set; } = [];
    public Vector3[] OldTangents { get; private set; } = [];
    public double[] OldLengths { get; private set; } = [];
    public double[] Diagonal { get; private set; } = [];
    public double[] Off { get; private set; } = [];
    public double[] Pivots { get; private set; } = [];
    public double[] Columns { get; private set; } = [];
    public double[] Reduced { get; private set; } = [];
    public double[] Corner { get; private set; } = [];
    public double[] CornerGradient { get; private set; } = [];
    public double[] Schur { get; private set; } = [];
    public double[] Right { get; private set; } = [];
    public double[] Step { get; private set; } = [];
    public double[] BorderStep { get; private set; } = [];
    public double[] Over { get; private set; } = [];
    public double[] Weight { get; private set; } = [];
    public SymmetricFactor Factor { get; } = new();

    public void Fit(int nodes, int slots, int columns, int border, int spans)
    {
        if (B1.Length < nodes)
            (B1, B2, OldTangents, Step) = (new Vector3[nodes], new Vector3[nodes], new Vector3[nodes], new double[2 * nodes]);
        if (Gradient.Length < slots)
        {
            Gradient = new Vector3[slots];
            (Diagonal, Off, Pivots) = (new double[4 * slots], new double[4 * slots], new double[3 * slots]);
            (Columns, Reduced) = (new double[2 * slots * columns], new double[2 * slots * columns]);
        }

        if (BorderStep.Length < border)
        {
            (Corner, Schur) = (new double[border * border], new double[border * border]);
            (CornerGradient, Right, BorderStep, Over, Weight) = (new double[border], new double[border], new double[border], new double[border], new double[border]);
        }

        if (OldLengths.Length < spans)
            OldLengths = new double[spans];
    }
}
