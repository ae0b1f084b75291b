const names = `
    <x:element name="name" type="x:string" minOccurs="0"/>
    <x:element name="description" type="x:string" minOccurs="0"/>`

/**
 * What the published schema of KML 2.2 (Open Geospatial Consortium, 07-147r2) asks of a file, written down anew as a
 * small schema: order of elements, which geometries there are, what they hold. Its coordinates are a list of any words;
 * here each must be two or three numbers. Elements that we never write are left out, so that whatever passes here
 * passes there.
 */
export const kmlRules = `<?xml version="1.0"?>
<x:schema xmlns:x="http://www.w3.org/2001/XMLSchema" xmlns="http://www.opengis.net/kml/2.2"
  targetNamespace="http://www.opengis.net/kml/2.2" elementFormDefault="qualified">
  <x:simpleType name="position"><x:restriction base="x:string">
    <x:pattern value="-?[0-9]+(\\.[0-9]+)?,-?[0-9]+(\\.[0-9]+)?(,-?[0-9]+(\\.[0-9]+)?)?"/></x:restriction></x:simpleType>
  <x:simpleType name="positions"><x:list itemType="position"/></x:simpleType>
  <x:complexType name="pointType"><x:sequence>
    <x:element name="extrude" type="x:boolean" minOccurs="0"/>
    <x:element name="coordinates" type="positions"/></x:sequence></x:complexType>
  <x:complexType name="lineType"><x:sequence>
    <x:element name="extrude" type="x:boolean" minOccurs="0"/>
    <x:element name="tessellate" type="x:boolean" minOccurs="0"/>
    <x:element name="coordinates" type="positions"/></x:sequence></x:complexType>
  <x:complexType name="edgeType"><x:sequence>
    <x:element name="LinearRing" type="lineType"/></x:sequence></x:complexType>
  <x:complexType name="areaType"><x:sequence>
    <x:element name="extrude" type="x:boolean" minOccurs="0"/>
    <x:element name="tessellate" type="x:boolean" minOccurs="0"/>
    <x:element name="outerBoundaryIs" type="edgeType"/>
    <x:element name="innerBoundaryIs" type="edgeType" minOccurs="0" maxOccurs="unbounded"/></x:sequence></x:complexType>
  <x:group name="geometry"><x:choice>
    <x:element name="Point" type="pointType"/>
    <x:element name="LineString" type="lineType"/>
    <x:element name="Polygon" type="areaType"/>
    <x:element name="MultiGeometry"><x:complexType>
      <x:group ref="geometry" minOccurs="0" maxOccurs="unbounded"/></x:complexType></x:element>
  </x:choice></x:group>
  <x:element name="Placemark"><x:complexType><x:sequence>${names}
    <x:element name="ExtendedData" minOccurs="0"><x:complexType><x:sequence>
      <x:element name="Data" minOccurs="0" maxOccurs="unbounded"><x:complexType>
        <x:sequence>
          <x:element name="displayName" type="x:string" minOccurs="0"/>
          <x:element name="value" type="x:string"/>
        </x:sequence>
        <x:attribute name="name" type="x:string"/>
      </x:complexType></x:element>
    </x:sequence></x:complexType></x:element>
    <x:group ref="geometry" minOccurs="0"/>
  </x:sequence></x:complexType></x:element>
  <x:element name="Folder"><x:complexType><x:sequence>${names}
    <x:element ref="Placemark" minOccurs="0" maxOccurs="unbounded"/>
  </x:sequence></x:complexType></x:element>
  <x:element name="kml"><x:complexType><x:sequence>
    <x:element name="Document" minOccurs="0"><x:complexType><x:sequence>${names}
      <x:element ref="Folder" minOccurs="0" maxOccurs="unbounded"/>
    </x:sequence></x:complexType></x:element>
  </x:sequence></x:complexType></x:element>
</x:schema>`
