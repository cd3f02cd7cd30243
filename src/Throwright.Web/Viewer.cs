using Microsoft.JSInterop;
using Throwright.Engine.Model;

namespace Throwright.Web;

/// <summary>What one window prefers: units. The file's own choice holds until the window chooses.</summary>
public sealed class Viewer(IJSRuntime script) : IDisposable
{
    private DotNetObjectReference<Viewer>? self;
    private Task? remembering;
    private (Aircraft? From, Aircraft? To) shown;

    public event Action? Changed;

    public LengthUnit? Unit { get; private set; }

    /// <summary>How wide the window is, px, in steps: drawings are made as wide as they are shown, so that their letters are.</summary>
    public int Width { get; private set; } = 1440;

    /// <summary>The window is as narrow as a phone: drawings stand upright.</summary>
    public bool IsNarrow => Width < 700;

    public Aircraft Shown(Aircraft aircraft)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        if (Unit is not { } unit || unit == aircraft.Display.Length)
            return aircraft;
        // The same aircraft gives the same object, so that what rests on it is found again without a look at all of it.
        if (!ReferenceEquals(shown.From, aircraft) || shown.To?.Display.Length != unit)
            shown = (aircraft, aircraft with { Display = aircraft.Display with { Length = unit } });
        return shown.To!;
    }

    /// <summary>The page's script says how wide the window is, now and whenever that changes.</summary>
    [JSInvokable]
    public void Wide(int width)
    {
        // A step, so that a window that is being drawn wider is not drawn anew at every pixel.
        var step = Math.Clamp(width, 320, 4000) / 20 * 20;
        if (step == Width)
            return;
        Width = step;
        Changed?.Invoke();
    }

    public void Dispose() => self?.Dispose();

    /// <summary>What the browser remembers from the last visit.</summary>
    public Task Remember() => remembering ??= Remembered();

    private async Task Remembered()
    {
        self = DotNetObjectReference.Create(this);
        var kept = await Ask("remembered", self).ConfigureAwait(false);
        Unit = kept is "mm" ? LengthUnit.Millimetre : kept is "in" ? LengthUnit.Inch : null;
        Changed?.Invoke();
    }

    public async Task Choose(LengthUnit unit)
    {
        Unit = unit;
        Changed?.Invoke();
        await Tell("remember", unit == LengthUnit.Inch ? "in" : "mm").ConfigureAwait(false);
    }

    /// <summary>Tells the page's script something; a window that is gone hears nothing.</summary>
    public async Task Tell(string what, params object?[] with)
    {
        try
        {
            await script.InvokeVoidAsync("throwright." + what, with).ConfigureAwait(false);
        }
        catch (Exception e) when (e is JSDisconnectedException or JSException or OperationCanceledException or InvalidOperationException)
        {
            // The window was closed, or is only being put together.
        }
    }

    private async Task<string?> Ask(string what, params object?[] with)
    {
        try
        {
            return await script.InvokeAsync<string?>("throwright." + what, with).ConfigureAwait(false);
        }
        catch (Exception e) when (e is JSDisconnectedException or JSException or OperationCanceledException or InvalidOperationException)
        {
            return null;
        }
    }
}
