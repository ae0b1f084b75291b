/**
 * What the published schema of GPX 1.1 (Topografix) asks of a file, written down anew as a small schema: which elements
 * there are, in which order, which attributes must be there, and what degrees may be. Elements that we never write
 * (author, copyright, bounds, accuracy) are left out, so that whatever passes here passes there.
 */
export const gpxRules = `<?xml version="1.0"?>
<x:schema xmlns:x="http://www.w3.org/2001/XMLSchema" xmlns="http://www.topografix.com/GPX/1/1"
  targetNamespace="http://www.topografix.com/GPX/1/1" elementFormDefault="qualified">
  <x:simpleType name="lat"><x:restriction base="x:decimal">
    <x:minInclusive value="-90"/><x:maxInclusive value="90"/></x:restriction></x:simpleType>
  <x:simpleType name="lon"><x:restriction base="x:decimal">
    <x:minInclusive value="-180"/><x:maxExclusive value="180"/></x:restriction></x:simpleType>
  <x:complexType name="others"><x:sequence>
    <x:any namespace="##other" processContents="lax" minOccurs="0" maxOccurs="unbounded"/></x:sequence></x:complexType>
  <x:complexType name="point">
    <x:sequence>
      <x:element name="ele" type="x:decimal" minOccurs="0"/>
      <x:element name="time" type="x:dateTime" minOccurs="0"/>
      <x:element name="name" type="x:string" minOccurs="0"/>
      <x:element name="cmt" type="x:string" minOccurs="0"/>
      <x:element name="desc" type="x:string" minOccurs="0"/>
      <x:element name="sym" type="x:string" minOccurs="0"/>
      <x:element name="type" type="x:string" minOccurs="0"/>
      <x:element name="extensions" type="others" minOccurs="0"/>
    </x:sequence>
    <x:attribute name="lat" type="lat" use="required"/>
    <x:attribute name="lon" type="lon" use="required"/>
  </x:complexType>
  <x:complexType name="route"><x:sequence>
    <x:element name="name" type="x:string" minOccurs="0"/>
    <x:element name="cmt" type="x:string" minOccurs="0"/>
    <x:element name="desc" type="x:string" minOccurs="0"/>
    <x:element name="number" type="x:nonNegativeInteger" minOccurs="0"/>
    <x:element name="type" type="x:string" minOccurs="0"/>
    <x:element name="extensions" type="others" minOccurs="0"/>
    <x:element name="rtept" type="point" minOccurs="0" maxOccurs="unbounded"/>
  </x:sequence></x:complexType>
  <x:complexType name="segment"><x:sequence>
    <x:element name="trkpt" type="point" minOccurs="0" maxOccurs="unbounded"/>
    <x:element name="extensions" type="others" minOccurs="0"/>
  </x:sequence></x:complexType>
  <x:complexType name="track"><x:sequence>
    <x:element name="name" type="x:string" minOccurs="0"/>
    <x:element name="cmt" type="x:string" minOccurs="0"/>
    <x:element name="desc" type="x:string" minOccurs="0"/>
    <x:element name="number" type="x:nonNegativeInteger" minOccurs="0"/>
    <x:element name="type" type="x:string" minOccurs="0"/>
    <x:element name="extensions" type="others" minOccurs="0"/>
    <x:element name="trkseg" type="segment" minOccurs="0" maxOccurs="unbounded"/>
  </x:sequence></x:complexType>
  <x:element name="gpx"><x:complexType>
    <x:sequence>
      <x:element name="metadata" minOccurs="0"><x:complexType><x:sequence>
        <x:element name="name" type="x:string" minOccurs="0"/>
        <x:element name="desc" type="x:string" minOccurs="0"/>
      </x:sequence></x:complexType></x:element>
      <x:element name="wpt" type="point" minOccurs="0" maxOccurs="unbounded"/>
      <x:element name="rte" type="route" minOccurs="0" maxOccurs="unbounded"/>
      <x:element name="trk" type="track" minOccurs="0" maxOccurs="unbounded"/>
      <x:element name="extensions" type="others" minOccurs="0"/>
    </x:sequence>
    <x:attribute name="version" type="x:string" use="required" fixed="1.1"/>
    <x:attribute name="creator" type="x:string" use="required"/>
  </x:complexType></x:element>
</x:schema>`
