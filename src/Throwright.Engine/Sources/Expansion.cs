using Throwright.Engine.Model;

namespace Throwright.Engine.Sources;

/// <summary>Published thermal expansion of core, conduit and airframe, 1/K.</summary>
public static class Expansion
{
    public static Sourced Of(CoreMaterial material) => Sourced.From(Published.Get(material switch
    {
        CoreMaterial.MusicWire => "expansion/music-wire",
        CoreMaterial.Stainless302 => "expansion/stainless-304",
        _ => throw new ArgumentOutOfRangeException(nameof(material)),
    }));

    public static Sourced Of(ConduitMaterial material) => Sourced.From(Published.Get(material switch
    {
        ConduitMaterial.CarbonSteel => "expansion/steel-1020",
        ConduitMaterial.Stainless302 => "expansion/stainless-304",
        _ => throw new ArgumentOutOfRangeException(nameof(material)),
    }));

    /// <summary>The material of the structure that spans the distance.</summary>
    /// <remarks>
    /// Aluminium: the alloy is not asked for, so the band holds 2024, 6061 and 7075 and the value is that of 2024.
    /// Wood: along the grain, Douglas fir. Composites: the middle of a band that depends on the lay-up.
    /// </remarks>
    public static Sourced Of(AirframeMaterial material)
    {
        if (material == AirframeMaterial.Aluminium)
        {
            var skin = Published.Get("expansion/aluminium-2024");
            var extrusion = Published.Get("expansion/aluminium-6061");
            var fitting = Published.Get("expansion/aluminium-7075");
            return new(skin.Value, skin.Source, "2024; the band holds 6061 and 7075 too")
            {
                Low = Math.Min(skin.Low, Math.Min(extrusion.Low, fitting.Low)),
                High = Math.Max(skin.High, Math.Max(extrusion.High, fitting.High)),
            };
        }

        return Sourced.From(Published.Get(material switch
        {
            AirframeMaterial.SteelTube => "expansion/steel-4140",
            AirframeMaterial.CarbonComposite => "expansion/carbon-quasi-isotropic",
            AirframeMaterial.GlassComposite => "expansion/glass-woven",
            AirframeMaterial.Wood => "expansion/fir-along",
            _ => throw new ArgumentOutOfRangeException(nameof(material)),
        }));
    }
}
